import { type DriftingTempo, evenTime } from '../../../signal/even-tempo';
import { fitWave } from '../../../signal/fit-wave';
import type { BodyContext } from '../context/body-context';
import type { CycleFrame } from '../context/cycle-frame';
import { kickHarmonics } from './kick-harmonics';
import type { LandmarkTrace } from '../points/landmark-trace';

/** The base period as events and the toe's path tell it together. */
export interface TracePeriod {
  readonly period: number;
  readonly variance: number;
  /** How the tempo drifts over the cycles, where the toe's path shows it; else null. */
  readonly tempo: DriftingTempo | null;
}

/** Samples of a kick that are asked at most. Our default. */
const samplesInKick = 16;

const kept = new WeakMap<CycleFrame, TracePeriod>();

/** A drift of the tempo is taken where it makes the squared misfit of path and marks less by this: three standard deviations. */
const driftTold = 9;

/** Tempo that drifts by more over a swim is none. Our default. */
const mostDrift = 0.4;

/**
 * Period of the waves fitted to traces: marked events alone give it within their own error, which over many cycles
 * would smear a fitted wave; the toe's path is asked as well where it is dense. The two are weighed by their
 * variances: the period that makes the squared misfit of the path plus that of the events least, by parabola through
 * three trials, three times. Falls back on the events, and never leaves four of their standard deviations. A tempo that drifts
 * over the swim smears waves as well: where marks and path show a drift, it is found in the same way.
 */
export function tracePeriod(context: BodyContext, frame: CycleFrame): TracePeriod {
  const known = kept.get(frame);
  if (known) return known;
  const found = refine(context.trace('toe'), frame) ?? {
    period: frame.period,
    variance: frame.periodVariance,
    tempo: markedTempo(frame),
  };
  kept.set(frame, found);
  return found;
}

/** The drift as the marks alone tell it; null where they tell none. */
function markedTempo({ drift, spans }: CycleFrame): DriftingTempo | null {
  const [from, to] = [spans[0]?.start ?? 0, spans.at(-1)?.end ?? 0];
  const isTold =
    drift !== null && drift.value ** 2 > driftTold * drift.variance && Math.abs(drift.value) < mostDrift;
  return isTold ? { from, to, drift: drift.value } : null;
}

/** Squared misfit of the toe's path and the events for a period and a drift; null where no wave can be fitted. */
type Misfit = (period: number, drift: number) => number | null;

function refine(trace: LandmarkTrace, frame: CycleFrame): TracePeriod | null {
  const prior = Math.sqrt(frame.periodVariance);
  const misfit = prior > 0 ? misfitOf(trace, frame) : null;
  if (!misfit) return null;
  const periodAt = (drift: number): Lowest | null =>
    lowest((period) => misfit(period, drift), frame.period, 1.5 * prior, 3, 4 * prior);
  const even = periodAt(0);
  const drift = frame.spans.length > 1 ? driftOf(misfit, frame, even?.at ?? frame.period) : null;
  // lines that are too few once cycles are laid over one another leave the tempo to the marks
  if (drift === null && markedTempo(frame)) return null;
  const drifting = drift === null ? null : periodAt(drift);
  const isTold =
    drift !== null && drifting !== null && (even === null || drifting.value < even.value - driftTold);
  const found = isTold ? drifting : even;
  if (!found || !(found.bend > 0)) return null;
  const [from, to] = [frame.spans[0]?.start ?? 0, frame.spans.at(-1)?.end ?? 0];
  return {
    period: found.at,
    variance: Math.min(frame.periodVariance, 2 / found.bend),
    tempo: isTold ? { from, to, drift } : null,
  };
}

function misfitOf(trace: LandmarkTrace, frame: CycleFrame): Misfit | null {
  const first = frame.spans[0];
  const last = frame.spans.at(-1);
  if (!first || !last || !(trace.sd > 0)) return null;
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
  return (period, drift) => {
    const tempo = { from: first.start, to: last.end, drift };
    const evened = drift === 0 ? times : times.map((time) => evenTime(tempo, time));
    const fit = fitWave(evened, y, { period, harmonics, slope: true }, weights, room);
    if (!fit || fit.residualSd === null) return null;
    const freedom = times.length - fit.coefficients.length;
    return (
      (fit.residualSd ** 2 * freedom) / trace.sd ** 2 +
      (period - frame.period) ** 2 / frame.periodVariance +
      (frame.drift ? (drift - frame.drift.value) ** 2 / frame.drift.variance : 0)
    );
  };
}

/** The drift that path and marks show best, looked for from none and from what the marks alone tell. */
function driftOf(
  misfit: Misfit,
  { spans, kickHarmonic, drift: toldDrift }: CycleFrame,
  period: number,
): number | null {
  const marked = Math.max(-mostDrift / 2, Math.min(mostDrift / 2, toldDrift?.value ?? 0));
  const of = (drift: number): number | null => misfit(period, drift);
  // a drift by this moves the kicks in the middle of the swim by a thirtieth of a kick
  const cycles = ((spans.at(-1)?.end ?? 0) - (spans[0]?.start ?? 0)) / period;
  const step = 1 / (4 * cycles * kickHarmonic);
  const [still, told] = [of(0), of(marked)];
  const start = still !== null && told !== null && told < still ? marked : 0;
  return lowest(of, start, step, 5, mostDrift)?.at ?? null;
}

interface Lowest {
  readonly at: number;
  readonly value: number;
  readonly bend: number;
}

/** Where a function is least, from a place on, by parabola through three trials; null once it leaves `reach` or has no value. */
function lowest(
  of: (at: number) => number | null,
  from: number,
  firstStep: number,
  rounds: number,
  reach: number,
): Lowest | null {
  let [at, step, bend] = [from, firstStep, 0];
  for (let round = 0; round < rounds; round++) {
    const [a, b, c] = [of(at - step), of(at), of(at + step)];
    if (a === null || b === null || c === null) return null;
    bend = (a - 2 * b + c) / (step * step);
    // not bowl-shaped: step to the better side and try again
    const move = bend > 0 ? (a - c) / (2 * step * bend) : a < c ? -step : step;
    at += Math.max(-1.5 * step, Math.min(1.5 * step, move));
    if (Math.abs(at - from) > reach) return null;
    step = bend > 0 ? Math.min(step, 1.5 * Math.sqrt(2 / bend)) : step;
  }
  const value = of(at);
  return value === null ? null : { at, value, bend };
}
