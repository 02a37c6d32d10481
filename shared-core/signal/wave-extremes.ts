import type { WaveFit } from './fit-wave';
import { newtonStep, power, unitVariance, waveValue, waveWeights, weighted } from './wave-value';

export interface WaveExtreme {
  readonly time: number;
  /** Fitted value there, as fitted: noise lifts a maximum (see `extremeLift`). */
  readonly value: number;
  readonly weights: readonly number[];
  /** Variance of the value for samples of variance 1. */
  readonly unitVariance: number;
  /** Variance of the slope there for samples of variance 1, and how strongly the curve bends there. */
  readonly slopeUnitVariance: number;
  readonly bend: number;
}

export interface WaveExtremes {
  readonly highest: WaveExtreme;
  readonly lowest: WaveExtreme;
}

/** Points of one period looked at before the best is refined; an even number. */
const gridPoints = 96;
const halfGrid = gridPoints / 2;
const gridCosine = Float64Array.from({ length: gridPoints }, (_, i) =>
  Math.cos((2 * Math.PI * i) / gridPoints),
);
const gridSine = Float64Array.from({ length: gridPoints }, (_, i) =>
  Math.sin((2 * Math.PI * i) / gridPoints),
);

/** Filled anew by each search; hundreds are made for one swim. */
const odd = new Float64Array(halfGrid);
const even = new Float64Array(halfGrid);

/**
 * Highest (sign 1) or lowest (sign −1) value over one period of a fitted wave, or of its derivative of `order`.
 * Slope and offset are left out for the value; for the speed (order 1) the slope counts when `drift` is set.
 * A wave with no harmonics has no extreme: null.
 */
export function waveExtreme(fit: WaveFit, sign: 1 | -1, order: number, drift = false): WaveExtreme | null {
  if (fit.harmonics < 1) return null;
  const grid = gridWinners(fit, order);
  return polished(fit, sign > 0 ? grid.highest : grid.lowest, order, drift);
}

/** Highest and lowest value over one period, as `waveExtreme` finds them, for little more than one. */
export function waveExtremes(fit: WaveFit, order: number, drift = false): WaveExtremes | null {
  if (fit.harmonics < 1) return null;
  const grid = gridWinners(fit, order);
  return {
    highest: polished(fit, grid.highest, order, drift),
    lowest: polished(fit, grid.lowest, order, drift),
  };
}

/** The extreme beside a grid point, by Newton's steps on the slope. */
function polished(fit: WaveFit, gridPoint: number, order: number, drift: boolean): WaveExtreme {
  const period = (2 * Math.PI) / fit.angularFrequency;
  let time = fit.centre + (gridPoint / gridPoints) * period;
  const limit = period / gridPoints;
  const start = time;
  for (let i = 0; i < 5; i++) {
    const move = newtonStep(fit, time, order + 1);
    if (move === null) break;
    const next = time + Math.max(-limit, Math.min(limit, move));
    // Newton's step may only polish the grid's winner, never run to another bump
    if (!Number.isFinite(next) || Math.abs(next - start) > 1.5 * limit) break;
    if (Math.abs(next - time) < 1e-10 * period) break;
    time = next;
  }
  const weights = waveWeights(fit, time, order, drift);
  return {
    time,
    value: weighted(fit, weights),
    weights,
    unitVariance: unitVariance(fit, weights),
    slopeUnitVariance: unitVariance(fit, waveWeights(fit, time, order + 1, false)),
    bend: Math.abs(waveValue(fit, time, order + 2, false)),
  };
}

/**
 * How far noise lifts the extreme of a fitted curve beyond that of the true one, on average; take it off a maximum,
 * add it to a minimum. For a well bent top it is var(y′)/(2|y″|), second order; over a flat one, where that form runs
 * away, it tends to 0.8 standard deviations of the fitted value, about the mean of the largest of three draws.
 */
export function extremeLift(extreme: WaveExtreme, sampleVariance: number): number {
  const wobble = sampleVariance * extreme.slopeUnitVariance;
  const sd = Math.sqrt(sampleVariance * extreme.unitVariance);
  if (!(wobble > 0) || !(sd > 0)) return 0;
  return wobble / (2 * extreme.bend + wobble / (0.8 * sd));
}

/**
 * Grid points of the highest and the lowest value of the wave's derivative of `order`. Half a period on, odd harmonics
 * change sign and even ones do not, so only half the grid is summed.
 */
function gridWinners(fit: WaveFit, order: number): { highest: number; lowest: number } {
  const first = fit.hasSlope ? 2 : 1;
  odd.fill(0);
  even.fill(0);
  for (let k = 1; k <= fit.harmonics; k++) {
    const size = power(k * fit.angularFrequency, order);
    const cosine = (fit.coefficients[first + 2 * k - 2] as number) * size;
    const sine = (fit.coefficients[first + 2 * k - 1] as number) * size;
    // each derivative turns cosine into minus sine and sine into cosine
    const sign = order % 4 === 0 || order % 4 === 3 ? 1 : -1;
    const other = order % 4 < 2 ? 1 : -1;
    const a = order % 2 === 0 ? sign * cosine : other * sine;
    const b = order % 2 === 0 ? other * sine : sign * cosine;
    const sums = k % 2 === 0 ? even : odd;
    let at = 0;
    for (let i = 0; i < halfGrid; i++) {
      sums[i] = (sums[i] as number) + a * (gridCosine[at] as number) + b * (gridSine[at] as number);
      at += k;
      if (at >= gridPoints) at %= gridPoints;
    }
  }
  let [highest, lowest] = [0, 0];
  let [top, bottom] = [-Infinity, Infinity];
  const look = (value: number, at: number): void => {
    if (value > top) [top, highest] = [value, at];
    if (value < bottom) [bottom, lowest] = [value, at];
  };
  for (let i = 0; i < halfGrid; i++) look((even[i] as number) + (odd[i] as number), i);
  for (let i = 0; i < halfGrid; i++) look((even[i] as number) - (odd[i] as number), halfGrid + i);
  return { highest, lowest };
}

export interface Estimate {
  readonly value: number;
  readonly variance: number;
  /** What was taken off for noise. */
  readonly lift: number;
}

/**
 * Peak-to-peak of a fitted wave over its period, with the lift that noise gives to extremes taken off.
 *
 * @param sampleVariance variance of one sample
 * @param liftVariance the same for the noise that lifts extremes, where that is another
 * @param steadier extremes of a fit to more samples of the same wave, whose bends and size are better known: noise bends the
 *   very top it makes, so that a fit's own bend tells too little lift
 * @returns null when the wave is so small against the noise that the correction itself cannot be trusted (more than a
 *   fifth of the value)
 */
export function wavePeakToPeak(
  fit: WaveFit,
  sampleVariance: number,
  liftVariance = sampleVariance,
  steadier: WaveExtremes | null = null,
): Estimate | null {
  const found = waveExtremes(fit, 0);
  if (!found) return null;
  const { highest: top, lowest: bottom } = found;
  const like = steadier ?? found;
  const raw = top.value - bottom.value;
  const above = extremeLift({ ...top, bend: like.highest.bend }, liftVariance);
  const below = extremeLift({ ...bottom, bend: like.lowest.bend }, liftVariance);
  const lift = above + below;
  if (!(lift <= (like.highest.value - like.lowest.value) / 5)) return null;
  const difference = top.weights.map((w, i) => w - (bottom.weights[i] as number));
  // a lift goes with the square of one normal error, whose variance is twice the square of its mean
  const lifts = 2 * (above ** 2 + below ** 2);
  return { value: raw - lift, variance: sampleVariance * unitVariance(fit, difference) + lifts, lift };
}
