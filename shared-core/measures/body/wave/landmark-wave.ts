import type { LandmarkName } from '../../../marks/landmark';
import { type DriftingTempo, evenTime } from '../../../signal/even-tempo';
import { firstAtOrAfter } from '../../../signal/first-at-or-after';
import { fitDesign, type WaveFit } from '../../../signal/fit-wave';
import { type WaveDesign, waveDesign } from '../../../signal/wave-design';
import type { MissingReason } from '../../reading';
import type { BodyContext } from '../context/body-context';
import type { CycleFrame } from '../context/cycle-frame';
import type { CycleSpan } from '../context/cycle-span';
import { kickHarmonics } from './kick-harmonics';
import { bunched, bunchedAtMost, widest, widestGap } from './sample-places';
import type { LandmarkTrace } from '../points/landmark-trace';
import { tracePeriod } from './trace-period';

interface CycleWave {
  readonly span: CycleSpan;
  readonly fit: WaveFit;
}

/** The fitted movement of one coordinate of one landmark over the swim's whole cycles. */
export interface LandmarkWave {
  readonly frame: CycleFrame;
  /** A time on the clock that the fits run by: the real one but where the tempo drifts. */
  readonly clock: (time: number) => number;
  /** One fit through all whole cycles. */
  readonly pooled: WaveFit;
  readonly pooledDesign: WaveDesign;
  /** A fit to each cycle, drift taken off, when every cycle holds enough postures; else empty. */
  readonly perCycle: readonly CycleWave[];
  readonly frames: readonly number[];
  readonly sd: number;
  /** Variance of one sample for what noise lifts extremes by; below sd² where followed points' errors are slow. */
  readonly liftVariance: number;
  /** Base period the fits were made with, seconds. */
  readonly period: number;
  readonly periodVariance: number;
  /** The trace does not reach 0.2 s beyond both ends of the cycles. */
  readonly shortEnds: boolean;
}

export type WaveResult =
  | { readonly ok: true; readonly wave: LandmarkWave }
  | { readonly ok: false; readonly reasons: readonly [MissingReason, ...MissingReason[]] };

/** Trace wanted beyond each end of the cycles. @see Sanders, Gonjo, McCabe 2015, J Sports Sci Med 14:441–451 */
const endSeconds = 0.2;

/** What is said of every reading of a wave. */
export const waveNotes = (wave: LandmarkWave): readonly 'short-ends'[] =>
  wave.shortEnds ? ['short-ends'] : [];

/** Why there are no cycles to read over; null when there is at least one. */
export function cyclesMissing(context: BodyContext): MissingReason | null {
  const { cycles, events } = context;
  const have = (kind: 'entry' | 'kick-top'): number => events.filter((e) => e.event.kind === kind).length;
  if (!cycles) return { code: 'needs-events', kind: 'kick-top', have: have('kick-top'), need: 2 };
  if (cycles.base === 'kick' && cycles.contradiction) return cycles.contradiction;
  if (cycles.spans.length === 0) return { code: 'needs-full-cycles', have: 0, need: 1 };
  return null;
}

/**
 * Fit a wave to `values` of a trace over the whole cycles of the swim, drift and harmonics together, with as many
 * harmonics as the postures carry (`kickMultiples` of the kick at most). With fewer than the kick itself needs, or with
 * postures bunched at the same places of the cycle, the wave can't be told.
 */
export function landmarkWave(
  context: BodyContext,
  landmark: LandmarkName,
  trace: LandmarkTrace,
  values: readonly number[],
  kickMultiples = kickHarmonics,
): WaveResult {
  const { cycles } = context;
  const known = kept.get(values);
  if (cycles && known?.kickMultiples === kickMultiples && known.cycles === cycles) return known.result;
  const result = fitLandmark(context, landmark, trace, values, kickMultiples);
  if (cycles) kept.set(values, { cycles, kickMultiples, result });
  return result;
}

/** Several readings ask for the same wave: it is fitted once for each row of values. */
const kept = new WeakMap<
  readonly number[],
  { readonly cycles: CycleFrame; readonly kickMultiples: number; readonly result: WaveResult }
>();

function fitLandmark(
  context: BodyContext,
  landmark: LandmarkName,
  trace: LandmarkTrace,
  values: readonly number[],
  kickMultiples: number,
): WaveResult {
  const missing = cyclesMissing(context);
  if (missing) return { ok: false, reasons: [missing] };
  const frame = context.cycles as CycleFrame;
  const first = frame.spans[0] as CycleSpan;
  const last = frame.spans.at(-1) as CycleSpan;
  const slack = 1e-9;
  const from = firstAtOrAfter(trace.times, first.start - slack);
  const to = firstAtOrAfter(trace.times, last.end + slack);
  const n = to - from;
  const alongTravel = values === trace.x;
  const { period, variance: periodVariance, tempo } = tracePeriod(context, frame);
  // way along travel goes by real time
  const drifting = alongTravel ? null : tempo;
  const times = drifting ? evenedTimes(trace.times, drifting) : trace.times;
  // heights at too few places of the cycle, as on the frames of marked events alone, fold the kick's second harmonic into
  // what is read; what swings along travel is read for its mean speed most of all
  const least = alongTravel ? frame.kickHarmonic : 2 * frame.kickHarmonic;
  const need = 2 * least + 3;
  if (n < need) return { ok: false, reasons: [{ code: 'needs-landmark', landmark, have: n, need }] };
  const most = kickMultiples * frame.kickHarmonic;
  const perCycle = n / frame.spans.length;
  const denser = { ok: false, reasons: [{ code: 'needs-denser-trace', landmark }] } as const;
  if (!alongTravel && perCycle < 2 * least + 1) return denser;
  if (!alongTravel && widestGap(times, from, to, first.start, period) > widest / frame.kickHarmonic)
    return denser;
  // what swings along travel is slow against the kick: its mean speed most of all
  const weights = trace.followed && (alongTravel ? trace.followed.slowWeights : trace.followed.waveWeights);
  const window = { times, weights, from, to };
  const whole = richest(window, values, period, true, most, least, perCycle);
  if (!whole) return denser;
  const { fit: pooled, design: pooledDesign } = whole;
  if (!alongTravel && !weights && bunched(pooled, least, n) > bunchedAtMost) return denser;
  return {
    ok: true,
    wave: {
      frame,
      clock: drifting ? (time) => evenTime(drifting, time) : sameTime,
      pooled,
      pooledDesign,
      perCycle: cycleFits(window, trace.times, values, frame, pooled, most, least),
      period,
      periodVariance,
      frames: framesWithin(trace.frames, from, to),
      sd: trace.sd,
      liftVariance:
        trace.sd ** 2 * (trace.followed ? context.followedSpread.quick / context.followedSpread.wave : 1),
      shortEnds: !(
        (trace.times[0] ?? Infinity) <= first.start - endSeconds + slack &&
        (trace.times.at(-1) ?? -Infinity) >= last.end + endSeconds - slack
      ),
    },
  };
}

const sameTime = (time: number): number => time;

const evened = new WeakMap<
  readonly number[],
  { readonly tempo: DriftingTempo; readonly times: readonly number[] }
>();

/** A row of times on an even clock, the same object each time it is asked for, so that what hangs on it can be kept. */
function evenedTimes(times: readonly number[], tempo: DriftingTempo): readonly number[] {
  const known = evened.get(times);
  if (known?.tempo === tempo) return known.times;
  const made = times.map((time) => evenTime(tempo, time));
  evened.set(times, { tempo, times: made });
  return made;
}

const within = new WeakMap<readonly number[], Map<string, readonly number[]>>();

/** A stretch of a row of frames, the same object each time it is asked for, so that what hangs on it can be kept. */
function framesWithin(frames: readonly number[], from: number, to: number): readonly number[] {
  if (from === 0 && to === frames.length) return frames;
  const known = within.get(frames) ?? new Map<string, readonly number[]>();
  within.set(frames, known);
  const key = `${from} ${to}`;
  const found = known.get(key) ?? frames.slice(from, to);
  known.set(key, found);
  return found;
}

/** A stretch of a trace's times: `from` up to, not with, `to`. */
interface Window {
  readonly times: readonly number[];
  readonly weights: readonly number[] | null;
  readonly from: number;
  readonly to: number;
}

/** The fit with the most harmonics that the samples carry; null when not even `least` can be told. */
function richest(
  window: Window,
  values: readonly number[],
  period: number,
  slope: boolean,
  most: number,
  least: number,
  perCycle: number,
): { readonly fit: WaveFit; readonly design: WaveDesign } | null {
  // below two samples for the shortest wave in each cycle, its terms lean on cycles being exactly alike
  const carried = Math.max(least, Math.floor((perCycle - 1) / 2));
  const unknowns = slope ? 2 : 1;
  const limit = Math.min(most, carried, Math.floor((window.to - window.from - unknowns - 1) / 2));
  for (let harmonics = limit; harmonics >= least; harmonics--) {
    const design = designOf(window, period, harmonics, slope);
    if (design) return { fit: fitDesign(design, values, window.from), design };
  }
  return null;
}

interface KeptDesign {
  readonly weights: readonly number[] | null;
  readonly to: number;
  readonly period: number;
  readonly harmonics: number;
  readonly slope: boolean;
  readonly design: WaveDesign | null;
}

const designs = new WeakMap<readonly number[], Map<number, KeptDesign[]>>();

/** Stretches of one row of times whose designs are kept at most: past cycles of a dragged mark aren't asked for again. */
const keptStretches = 1000;

/** Landmarks marked on the same frames share their times, and so their designs. */
function designOf(window: Window, period: number, harmonics: number, slope: boolean): WaveDesign | null {
  const { times, weights, from, to } = window;
  const own = designs.get(times) ?? new Map<number, KeptDesign[]>();
  designs.set(times, own);
  const here = own.get(from) ?? [];
  for (const known of here)
    if (
      known.to === to &&
      known.period === period &&
      known.harmonics === harmonics &&
      known.slope === slope &&
      known.weights === weights
    )
      return known.design;
  if (own.size >= keptStretches) own.clear();
  const design = waveDesign(times, { period, harmonics, slope }, weights, from, to);
  own.set(from, [...here.slice(-7), { weights, to, period, harmonics, slope, design }]);
  return design;
}

function cycleFits(
  whole: Window,
  realTimes: readonly number[],
  values: readonly number[],
  frame: CycleFrame,
  pooled: WaveFit,
  most: number,
  least: number,
): readonly CycleWave[] {
  // a single cycle is what the pooled fit already is
  if (frame.spans.length < 2) return [];
  const { times, weights } = whole;
  const drift = pooled.coefficients[1] as number;
  const level = new Array<number>(values.length);
  for (let i = 0; i < level.length; i++)
    level[i] = (values[i] as number) - drift * ((times[i] as number) - pooled.centre);
  const period = (2 * Math.PI) / pooled.angularFrequency;
  const out: CycleWave[] = [];
  for (const span of frame.spans) {
    const from = firstAtOrAfter(realTimes, span.start - 1e-9);
    // the picture on which the next cycle begins is of that one
    const to = firstAtOrAfter(realTimes, span.end - 1e-9);
    if (to - from < 2 * least + 3) return [];
    const window = { times, weights, from, to };
    const own = richest(window, level, period, false, Math.min(most, pooled.harmonics), least, to - from);
    if (!own) return [];
    out.push({ span, fit: own.fit });
  }
  return out;
}
