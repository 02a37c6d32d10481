import type { LandmarkName } from '../../marks/landmark';
import { waveValue } from '../../signal/wave-value';
import type { BodyContext } from '../body/context/body-context';
import { landmarkWave } from '../body/wave/landmark-wave';
import { notFromSide } from '../body/context/side-view';

export interface CurvePoint {
  readonly frame: number;
  /** Real seconds. */
  readonly time: number;
  readonly value: number;
}

/** A point's height as marked, and the wave that was fitted to it. */
export interface HeightCurve {
  readonly landmark: LandmarkName;
  readonly points: readonly CurvePoint[];
  /** Over the whole cycles; empty where no wave could be told. */
  readonly fitted: readonly { readonly time: number; readonly value: number }[];
}

/** Samples of a drawn wave for each cycle. Our default: smooth at any width of a screen. */
const samplesPerCycle = 40;

/**
 * Heights of toe and hip against time, in the context's unit, up positive, each landmark's zero being the mean height of
 * the hips (of the toes where there are no hips), so that the two lie on one scale. Empty for views that can't show heights.
 */
export function heightCurves(context: BodyContext): readonly HeightCurve[] {
  if (notFromSide(context)) return [];
  const traces = (['hip', 'toe'] as const).map((landmark) => ({ landmark, trace: context.trace(landmark) }));
  const base = traces.find(({ trace }) => trace.y.length > 0)?.trace.y ?? [];
  const zero = base.reduce((sum, y) => sum + y, 0) / Math.max(1, base.length);
  return traces.flatMap(({ landmark, trace }): HeightCurve[] => {
    if (trace.y.length === 0) return [];
    const points = trace.times.map((time, i) => ({
      frame: trace.frames[i] as number,
      time,
      value: (trace.y[i] as number) - zero,
    }));
    const result = landmarkWave(context, landmark, trace, trace.y);
    if (!result.ok) return [{ landmark, points, fitted: [] }];
    const { frame, pooled, clock } = result.wave;
    const from = frame.spans[0]?.start ?? 0;
    const to = frame.spans.at(-1)?.end ?? from;
    const count = Math.max(2, samplesPerCycle * frame.spans.length);
    const fitted = Array.from({ length: count + 1 }, (_, i) => {
      const time = from + ((to - from) * i) / count;
      return { time, value: waveValue(pooled, clock(time)) - zero };
    });
    return [{ landmark, points, fitted }];
  });
}
