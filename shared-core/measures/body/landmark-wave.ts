import type { LandmarkName } from '../../marks/landmark';
import { fitWave, type WaveFit } from '../../signal/fit-wave';
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
  const missing = cyclesMissing(context);
  if (missing) return { ok: false, reasons: [missing] };
  const frame = context.cycles as CycleFrame;
  const first = frame.spans[0] as CycleSpan;
  const last = frame.spans.at(-1) as CycleSpan;
  const slack = 1e-9;
  const from = lowerBound(trace.times, first.start - slack);
  const to = lowerBound(trace.times, last.end + slack);
  const times = trace.times.slice(from, to);
  const samples = values.slice(from, to);
  const n = times.length;
  const least = frame.kickHarmonic;
  const need = 2 * least + 3;
  if (n < need) return { ok: false, reasons: [{ code: 'needs-landmark', landmark, have: n, need }] };
  const most = kickMultiples * frame.kickHarmonic;
  const { period } = tracePeriod(context, frame);
  const perCycle = n / frame.spans.length;
  const pooled = richest(times, samples, period, true, most, least, perCycle);
  if (!pooled) return { ok: false, reasons: [{ code: 'needs-denser-trace', landmark }] };
  return {
    ok: true,
    wave: {
      frame,
      pooled,
      perCycle: cycleFits(times, samples, frame, pooled, most, least),
      period,
      frames: trace.frames.slice(from, to),
      sd: trace.sd,
    },
  };
}

/** The fit with the most harmonics that the samples carry; null when not even `least` can be told. */
function richest(
  times: readonly number[],
  samples: readonly number[],
  period: number,
  slope: boolean,
  most: number,
  least: number,
  perCycle: number,
): WaveFit | null {
  // below two samples for the shortest wave in each cycle, its terms lean on cycles being exactly alike
  const carried = Math.max(least, Math.floor((perCycle - 1) / 2));
  const unknowns = slope ? 2 : 1;
  const limit = Math.min(most, carried, Math.floor((times.length - unknowns - 1) / 2));
  for (let harmonics = limit; harmonics >= least; harmonics--) {
    const fit = fitWave(times, samples, { period, harmonics, slope });
    if (fit) return fit;
  }
  return null;
}

function cycleFits(
  times: readonly number[],
  samples: readonly number[],
  frame: CycleFrame,
  pooled: WaveFit,
  most: number,
  least: number,
): readonly CycleWave[] {
  // a single cycle is what the pooled fit already is
  if (frame.spans.length < 2) return [];
  const drift = pooled.coefficients[1] ?? 0;
  const out: CycleWave[] = [];
  for (const span of frame.spans) {
    const from = lowerBound(times, span.start - 1e-9);
    const to = lowerBound(times, span.end + 1e-9);
    const own = times.slice(from, to);
    if (own.length < 2 * least + 4) return [];
    const level = samples.slice(from, to).map((y, i) => y - drift * ((own[i] ?? 0) - pooled.centre));
    const period = (2 * Math.PI) / pooled.angularFrequency;
    const fit = richest(own, level, period, false, Math.min(most, pooled.harmonics), least, own.length);
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
