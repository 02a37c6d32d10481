import { fitWave } from '../../../signal/fit-wave';
import type { BodyContext } from '../context/body-context';
import type { CycleFrame } from '../context/cycle-frame';
import { kickHarmonics } from './kick-harmonics';
import type { LandmarkTrace } from '../points/landmark-trace';

/** The base period as events and the toe's path tell it together. */
export interface TracePeriod {
  readonly period: number;
  readonly variance: number;
}

/** Samples of a kick that are asked at most. Our default. */
const samplesInKick = 16;

const kept = new WeakMap<CycleFrame, TracePeriod>();

/**
 * Period of the waves fitted to traces: marked events alone give it within their own error, which over many cycles
 * would smear a fitted wave; the toe's path is asked as well where it is dense. The two are weighed by their
 * variances: the period that makes the squared misfit of the path plus that of the events least, by parabola through
 * three trials, twice. Falls back on the events, and never leaves four of their standard deviations.
 */
export function tracePeriod(context: BodyContext, frame: CycleFrame): TracePeriod {
  const known = kept.get(frame);
  if (known) return known;
  const found = refine(context.trace('toe'), frame) ?? {
    period: frame.period,
    variance: frame.periodVariance,
  };
  kept.set(frame, found);
  return found;
}

function refine(trace: LandmarkTrace, frame: CycleFrame): TracePeriod | null {
  const first = frame.spans[0];
  const last = frame.spans.at(-1);
  const prior = Math.sqrt(frame.periodVariance);
  if (!first || !last || !(prior > 0) || !(trace.sd > 0)) return null;
  const inside: number[] = [];
  for (let i = 0; i < trace.times.length; i++) {
    const t = trace.times[i] as number;
    if (t >= first.start && t <= last.end) inside.push(i);
  }
  // as many as the fits that read the swim: a wave left out would be taken for a wrong period where there are few cycles
  const harmonics = kickHarmonics * frame.kickHarmonic;
  // a long dense trace tells the period many times over: a share of it is enough
  const stride = Math.max(
    1,
    Math.floor(inside.length / (frame.spans.length * samplesInKick * frame.kickHarmonic)),
  );
  const picked = inside.filter((_, i) => i % stride === 0);
  const times = picked.map((i) => trace.times[i] as number);
  const y = picked.map((i) => trace.y[i] as number);
  const weights = trace.followed && picked.map((i) => trace.followed?.waveWeights[i] ?? 1);
  // fewer samples than this leave the period to the events
  if (times.length < 4 * harmonics + 8) return null;
  const room = new Float64Array(times.length * (2 + 2 * harmonics));
  const misfit = (period: number): number | null => {
    const fit = fitWave(times, y, { period, harmonics, slope: true }, weights, room);
    if (!fit || fit.residualSd === null) return null;
    const freedom = times.length - fit.coefficients.length;
    return (
      (fit.residualSd ** 2 * freedom) / trace.sd ** 2 + (period - frame.period) ** 2 / frame.periodVariance
    );
  };
  let period = frame.period;
  let step = 1.5 * prior;
  let bend = 0;
  for (let round = 0; round < 3; round++) {
    const [a, b, c] = [misfit(period - step), misfit(period), misfit(period + step)];
    if (a === null || b === null || c === null) return null;
    bend = (a - 2 * b + c) / (step * step);
    // not bowl-shaped: step to the better side and try again
    const move = bend > 0 ? (a - c) / (2 * step * bend) : a < c ? -step : step;
    period += Math.max(-1.5 * step, Math.min(1.5 * step, move));
    if (Math.abs(period - frame.period) > 4 * prior) return null;
    step = bend > 0 ? Math.min(step, 1.5 * Math.sqrt(2 / bend)) : step;
  }
  return bend > 0 ? { period, variance: Math.min(frame.periodVariance, 2 / bend) } : null;
}
