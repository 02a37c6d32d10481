import { fitLine } from '../../signal/fit-line';
import { residualAnalysis } from '../../signal/residual-analysis';
import { medianRate, resampleUniform } from '../../signal/resample-uniform';
import { zeroLagLowPass } from '../../signal/butterworth';
import { centralDifference, centralDifferenceSd } from '../../signal/central-difference';
import { waveValue } from '../../signal/wave-value';
import type { BodyContext } from '../body/context/body-context';
import { centreOfMassTrace } from '../body/context/centre-of-mass';
import type { LandmarkTrace } from '../body/points/landmark-trace';
import { bestSpeed, speedUnit, type TraceSpeed } from '../body/speed/trace-speed';
import type { ReadingUnit } from '../reading';
import type { CurvePoint } from './height-curves';

/** Speed along travel against time, with the kicks that drive it. */
export interface SpeedCurve {
  readonly of: TraceSpeed['of'];
  readonly unit: ReadingUnit;
  readonly mean: number;
  /** From the filtered trace, frame by frame; empty where it is too sparse. */
  readonly points: readonly CurvePoint[];
  /** From the wave fitted over whole cycles. */
  readonly fitted: readonly { readonly time: number; readonly value: number }[];
  readonly kicks: readonly { readonly frame: number; readonly time: number; readonly top: boolean }[];
  /** Low-pass that was used, Hz. */
  readonly cutoffHz: number;
  /** What Winter's residual analysis of the longest stretch of the trace suggests, Hz; null where it says nothing. */
  readonly suggestedHz: number | null;
  /**
   * By how much marking alone would make the speed from frame to frame waver without a filter, standard deviation; null where
   * the trace is too sparse.
   */
  readonly rawNoise: number | null;
}

/** Usual low-pass of a trace before its speed is taken, Hz: common in swimming (from memory, no source read). */
export const usualCutoffHz = 6;
/** Fewer frames than this in a row are no trace, and gaps wider than this many usual ones part it. Our defaults. */
const leastFrames = 8;
const widestGaps = 2.5;
const samplesPerCycle = 40;

/**
 * Speed of the centre of mass where all landmarks carry it, else of the hips; null when no speed can be had.
 *
 * @param cutoffHz low-pass of the trace; 'suggested' takes what residual analysis says, or the usual where it says nothing
 */
export function speedCurve(
  context: BodyContext,
  cutoffHz: number | 'suggested' = usualCutoffHz,
): SpeedCurve | null {
  const result = bestSpeed(context);
  if (!result.ok) return null;
  const { speed } = result;
  const trace = speed.of === 'hip' ? context.trace('hip') : centreOfMassTrace(context);
  const runs = runsOf(trace);
  const suggestedHz = suggestedFor(runs);
  const longest = longestOf(runs);
  const cutoff = cutoffHz === 'suggested' ? (suggestedHz ?? usualCutoffHz) : cutoffHz;
  return {
    cutoffHz: cutoff,
    suggestedHz,
    rawNoise: longest && centralDifferenceSd(trace.sd, medianRate(longest.times)),
    of: speed.of,
    unit: speedUnit(context),
    mean: speed.value,
    points: runs.flatMap((run) => filteredSpeed(run, cutoff)),
    fitted: fittedSpeed(speed),
    kicks: context.events.flatMap(({ event, time }) =>
      event.kind === 'kick-top' || event.kind === 'kick-bottom'
        ? [{ frame: event.frame, time, top: event.kind === 'kick-top' }]
        : [],
    ),
  };
}

function fittedSpeed({ wave }: TraceSpeed): SpeedCurve['fitted'] {
  const from = wave?.frame.spans[0]?.start;
  const to = wave?.frame.spans.at(-1)?.end;
  if (!wave || from === undefined || to === undefined) return [];
  const count = samplesPerCycle * wave.frame.spans.length;
  return Array.from({ length: count + 1 }, (_, i) => {
    const time = from + ((to - from) * i) / count;
    return { time, value: waveValue(wave.pooled, time, 1) };
  });
}

interface Run {
  readonly frames: number[];
  readonly times: number[];
  readonly x: number[];
}

/** Stretches of the trace without a gap. */
function runsOf({ frames, times, x }: Pick<LandmarkTrace, 'frames' | 'times' | 'x'>): readonly Run[] {
  const gaps = times.slice(1).map((time, i) => time - (times[i] ?? time));
  const usual = [...gaps].sort((a, b) => a - b)[gaps.length >> 1] ?? 0;
  const runs: Run[] = [];
  times.forEach((time, i) => {
    const before = times[i - 1];
    if (before === undefined || time - before > widestGaps * usual)
      runs.push({ frames: [], times: [], x: [] });
    const run = runs.at(-1);
    run?.frames.push(frames[i] as number);
    run?.times.push(time);
    run?.x.push(x[i] as number);
  });
  return runs.filter((run) => run.times.length >= leastFrames);
}

const longestOf = (runs: readonly Run[]): Run | null =>
  runs.reduce<Run | null>((most, run) => (run.times.length > (most?.times.length ?? 0) ? run : most), null);

/** Residual analysis of the longest stretch, its steady way taken off: a filter passes that at any cut-off. */
function suggestedFor(runs: readonly Run[]): number | null {
  const longest = longestOf(runs);
  if (!longest) return null;
  const even = resampleUniform(longest.times, longest.x);
  const line = fitLine(
    even.samples.map((_, i) => i),
    even.samples,
  );
  if (!line) return null;
  const swing = even.samples.map((x, i) => x - line.intercept - line.slope * i);
  return residualAnalysis(swing, even.sampleHz)?.cutoffHz ?? null;
}

function filteredSpeed({ frames, times, x }: Run, cutoffHz: number): readonly CurvePoint[] {
  const even = resampleUniform(times, x);
  // a trace slower than twice the corner can't be filtered, and needs no filter against what it can't hold
  if (!(even.sampleHz > 2 * cutoffHz)) return [];
  const smooth = zeroLagLowPass(even.samples, cutoffHz, even.sampleHz);
  const slopeAt = (at: number): number | null => centralDifference(smooth, at, even.sampleHz);
  return times.flatMap((time, i): CurvePoint[] => {
    // the trace's own instants lie between the grid's
    const place = (time - even.startTime) * even.sampleHz;
    const from = Math.floor(place + 1e-6);
    const share = Math.max(0, place - from);
    const low = slopeAt(from);
    const high = share < 1e-6 ? low : slopeAt(from + 1);
    if (low === null || high === null) return [];
    return [{ frame: frames[i] as number, time, value: low + share * (high - low) }];
  });
}
