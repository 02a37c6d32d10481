import type { LandmarkName } from '../../marks/landmark';
import type { Point } from '../../units/point';
import type { BodyContext } from '../body/context/body-context';
import type { PosturePoints } from '../body/posture/posture-measure';
import { postureMeasures } from '../body/posture/posture-measures';
import { notFromSide } from '../body/context/side-view';
import { standardDeviation } from '../../signal/standard-deviation';

interface CyclePoint {
  readonly frame: number;
  /** From 0 at the cycle's start to 100 at its end. */
  readonly percent: number;
  readonly value: number;
  /** From 1. */
  readonly cycle: number;
}

/** An angle over the cycle: every posture of every cycle, and their mean ± SD where two cycles or more reach. */
export interface CycleCurve {
  readonly joint: 'knee-angle' | 'hip-angle';
  readonly points: readonly CyclePoint[];
  readonly mean: readonly { readonly percent: number; readonly mean: number; readonly sd: number }[];
}

/** Places of the mean, in percent, and the widest gap between postures that a cycle is read across. Our defaults. */
const step = 5;
const widestGap = 20;

/** Knee and hip angle against percent of the cycle, degrees, 180 straight. Empty without whole cycles. */
export function cycleCurves(context: BodyContext): readonly CycleCurve[] {
  const spans = context.cycles?.spans ?? [];
  if (notFromSide(context) || spans.length === 0) return [];
  return (['knee-angle', 'hip-angle'] as const).flatMap((joint): CycleCurve[] => {
    const angles = anglesOf(context, joint);
    const points = spans.flatMap(({ start, end }, i) =>
      angles.flatMap(({ frame, time, value }): CyclePoint[] =>
        time >= start - 1e-9 && time <= end + 1e-9
          ? [{ frame, percent: (100 * (time - start)) / (end - start), value, cycle: i + 1 }]
          : [],
      ),
    );
    return points.length === 0 ? [] : [{ joint, points, mean: meanCurve(points, spans.length) }];
  });
}

interface TimedAngle {
  readonly frame: number;
  readonly time: number;
  readonly value: number;
}

function anglesOf(context: BodyContext, joint: CycleCurve['joint']): readonly TimedAngle[] {
  const measure = postureMeasures.find(({ id }) => id === joint);
  if (!measure) return [];
  const byFrame = new Map<number, { time: number; points: Partial<Record<LandmarkName, Point>> }>();
  for (const landmark of measure.needs) {
    const trace = context.trace(landmark);
    trace.frames.forEach((frame, i) => {
      const found = byFrame.get(frame) ?? { time: trace.times[i] as number, points: {} };
      found.points[landmark] = { x: trace.x[i] as number, y: trace.y[i] as number };
      byFrame.set(frame, found);
    });
  }
  const situation = { belly: context.belly, sd: 0 };
  return [...byFrame]
    .flatMap(([frame, { time, points }]): TimedAngle[] => {
      const whole = measure.needs.every((name) => points[name]);
      const value = whole ? measure.read(points as PosturePoints, situation) : null;
      return value !== null && Number.isFinite(value) ? [{ frame, time, value }] : [];
    })
    .sort((a, b) => a.time - b.time);
}

function meanCurve(points: readonly CyclePoint[], cycles: number): CycleCurve['mean'] {
  const own = Array.from({ length: cycles }, (_, i) => points.filter(({ cycle }) => cycle === i + 1));
  return Array.from({ length: 100 / step + 1 }, (_, i) => i * step).flatMap((percent) => {
    const values = own.flatMap((cycle) => valueAt(cycle, percent));
    const sd = standardDeviation(values);
    if (sd === null) return [];
    return [{ percent, mean: values.reduce((sum, value) => sum + value, 0) / values.length, sd }];
  });
}

/** Between the two postures around a place, straight; none where they are too far apart or there is only one. */
function valueAt(cycle: readonly CyclePoint[], percent: number): readonly number[] {
  const after = cycle.findIndex((point) => point.percent >= percent - 1e-9);
  const b = cycle[after];
  if (!b) return [];
  if (Math.abs(b.percent - percent) < 1e-6) return [b.value];
  const a = cycle[after - 1];
  if (!a || b.percent - a.percent > widestGap) return [];
  const share = (percent - a.percent) / (b.percent - a.percent);
  return [a.value + share * (b.value - a.value)];
}
