import type { LandmarkName } from '../../marks/landmark';
import { fitDesign, type WaveFit } from '../../signal/fit-wave';
import { type WaveDesign, waveDesign } from '../../signal/wave-design';
import type { MissingReason } from '../reading';
import type { BodyContext, LandmarkTrace } from './body-context';
import type { CycleFrame, CycleSpan } from './cycle-frame';
import { tracePeriod } from './trace-period';

export interface CycleWave {
  readonly span: CycleSpan;
  readonly fit: WaveFit;
}

/** The fitted movement of one coordinate of one landmark over the swim's whole cycles. */
export interface LandmarkWave {
  readonly frame: CycleFrame;
  /** One fit through all whole cycles. */
  readonly pooled: WaveFit;
  /** A fit to each cycle, drift taken off, when every cycle holds enough postures; else empty. */
  readonly perCycle: readonly CycleWave[];
  readonly frames: readonly number[];
  readonly sd: number;
  /** Base period the fits were made with, seconds. */
  readonly period: number;
}

export type WaveResult =
  | { readonly ok: true; readonly wave: LandmarkWave }
  | { readonly ok: false; readonly reasons: readonly [MissingReason, ...MissingReason[]] };

/** Harmonics of the kick that are fitted at most: enough for an uneven kick, below the noise of marking. Our default. */
const kickHarmonics = 3;

/** Why there are no cycles to read over; null when there is at least one. */
export function cyclesMissing(context: BodyContext): MissingReason | null {
  const { cycles, events } = context;
  const have = (kind: 'entry' | 'kick-top'): number => events.filter((e) => e.event.kind === kind).length;
  if (!cycles) return { code: 'needs-events', kind: 'kick-top', have: have('kick-top'), need: 2 };
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
  const known = kept.get(values);
  if (known?.kickMultiples === kickMultiples) return known.result;
  const result = fitLandmark(context, landmark, trace, values, kickMultiples);
  kept.set(values, { kickMultiples, result });
  return result;
}

/** Several readings ask for the same wave: it is fitted once for each row of values. */
const kept = new WeakMap<
  readonly number[],
  { readonly kickMultiples: number; readonly result: WaveResult }
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
  const from = lowerBound(trace.times, first.start - slack);
  const to = lowerBound(trace.times, last.end + slack);
  const n = to - from;
  const least = frame.kickHarmonic;
  const need = 2 * least + 3;
  if (n < need) return { ok: false, reasons: [{ code: 'needs-landmark', landmark, have: n, need }] };
  const most = kickMultiples * frame.kickHarmonic;
  const { period } = tracePeriod(context, frame);
  const perCycle = n / frame.spans.length;
  const window = { times: trace.times, from, to };
  const pooled = richest(window, values, period, true, most, least, perCycle);
  if (!pooled) return { ok: false, reasons: [{ code: 'needs-denser-trace', landmark }] };
  return {
    ok: true,
    wave: {
      frame,
      pooled,
      perCycle: cycleFits(trace.times, values, frame, pooled, most, least),
      period,
      frames: trace.frames.slice(from, to),
      sd: trace.sd,
    },
  };
}

/** A stretch of a trace's times: `from` up to, not with, `to`. */
interface Window {
  readonly times: readonly number[];
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
): WaveFit | null {
  // below two samples for the shortest wave in each cycle, its terms lean on cycles being exactly alike
  const carried = Math.max(least, Math.floor((perCycle - 1) / 2));
  const unknowns = slope ? 2 : 1;
  const limit = Math.min(most, carried, Math.floor((window.to - window.from - unknowns - 1) / 2));
  for (let harmonics = limit; harmonics >= least; harmonics--) {
    const design = designOf(window, period, harmonics, slope);
    if (design) return fitDesign(design, values, window.from);
  }
  return null;
}

const designs = new WeakMap<readonly number[], Map<string, WaveDesign | null>>();

/** Landmarks marked on the same frames share their times, and so their designs. */
function designOf(window: Window, period: number, harmonics: number, slope: boolean): WaveDesign | null {
  const { times, from, to } = window;
  const own = designs.get(times) ?? new Map<string, WaveDesign | null>();
  designs.set(times, own);
  const key = `${from} ${to} ${period} ${harmonics} ${slope}`;
  const known = own.get(key);
  if (known !== undefined) return known;
  const design = waveDesign(times.slice(from, to), { period, harmonics, slope });
  own.set(key, design);
  return design;
}

function cycleFits(
  times: readonly number[],
  values: readonly number[],
  frame: CycleFrame,
  pooled: WaveFit,
  most: number,
  least: number,
): readonly CycleWave[] {
  // a single cycle is what the pooled fit already is
  if (frame.spans.length < 2) return [];
  const drift = pooled.coefficients[1] ?? 0;
  const level = values.map((y, i) => y - drift * ((times[i] ?? 0) - pooled.centre));
  const period = (2 * Math.PI) / pooled.angularFrequency;
  const out: CycleWave[] = [];
  for (const span of frame.spans) {
    const from = lowerBound(times, span.start - 1e-9);
    const to = lowerBound(times, span.end + 1e-9);
    if (to - from < 2 * least + 4) return [];
    const window = { times, from, to };
    const fit = richest(window, level, period, false, Math.min(most, pooled.harmonics), least, to - from);
    if (!fit) return [];
    out.push({ span, fit });
  }
  return out;
}

/** First index whose time is at or after `time`. */
function lowerBound(times: readonly number[], time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] ?? 0) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
