import type { WaveFit } from './fit-wave';
import { unitVariance, waveValue, waveWeights, weighted } from './wave-value';

export interface WaveExtreme {
  readonly time: number;
  /** Fitted value there, as fitted: noise lifts a maximum (see `extremeLift`). */
  readonly value: number;
  readonly weights: Float64Array;
  /** Variance of the value for samples of variance 1. */
  readonly unitVariance: number;
  /** Variance of the slope there for samples of variance 1, and how strongly the curve bends there. */
  readonly slopeUnitVariance: number;
  readonly bend: number;
}

/** Points of one period looked at before the best is refined. */
const gridPoints = 96;
const gridCosine = Float64Array.from({ length: gridPoints }, (_, i) =>
  Math.cos((2 * Math.PI * i) / gridPoints),
);
const gridSine = Float64Array.from({ length: gridPoints }, (_, i) =>
  Math.sin((2 * Math.PI * i) / gridPoints),
);

/**
 * Highest (sign 1) or lowest (sign −1) value over one period of a fitted wave, or of its derivative of `order`.
 * Slope and offset are left out for the value; for the speed (order 1) the slope counts when `drift` is set.
 * A wave with no harmonics has no extreme: null.
 */
export function waveExtreme(fit: WaveFit, sign: 1 | -1, order: number, drift = false): WaveExtreme | null {
  if (fit.harmonics < 1) return null;
  const period = (2 * Math.PI) / fit.angularFrequency;
  const best = gridWinner(fit, sign, order);
  let time = fit.centre + (best / gridPoints) * period;
  const limit = period / gridPoints;
  const start = time;
  for (let i = 0; i < 5; i++) {
    const bend = waveValue(fit, time, order + 2, false);
    if (bend === 0) break;
    const move = -waveValue(fit, time, order + 1, false) / bend;
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

/** Grid point of the highest (or lowest) value of the wave's derivative of `order`. */
function gridWinner(fit: WaveFit, sign: 1 | -1, order: number): number {
  const first = fit.hasSlope ? 2 : 1;
  const values = new Float64Array(gridPoints);
  for (let k = 1; k <= fit.harmonics; k++) {
    const size = sign * (order === 0 ? 1 : (k * fit.angularFrequency) ** order);
    const a = (fit.coefficients[first + 2 * (k - 1)] ?? 0) * size;
    const b = (fit.coefficients[first + 2 * (k - 1) + 1] ?? 0) * size;
    // each derivative turns cosine into minus sine and sine into cosine
    const turned = [
      [a, b],
      [b, -a],
      [-a, -b],
      [-b, a],
    ][order % 4] as [number, number];
    let at = 0;
    for (let i = 0; i < gridPoints; i++) {
      values[i] =
        (values[i] as number) + turned[0] * (gridCosine[at] as number) + turned[1] * (gridSine[at] as number);
      at = (at + k) % gridPoints;
    }
  }
  let best = 0;
  for (let i = 1; i < gridPoints; i++) if ((values[i] as number) > (values[best] as number)) best = i;
  return best;
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
 * @returns null when the wave is so small against the noise that the correction itself cannot be trusted (more than a
 *   fifth of the value)
 */
export function wavePeakToPeak(
  fit: WaveFit,
  sampleVariance: number,
  liftVariance = sampleVariance,
): Estimate | null {
  const top = waveExtreme(fit, 1, 0);
  const bottom = waveExtreme(fit, -1, 0);
  if (!top || !bottom) return null;
  const raw = top.value - bottom.value;
  const lift = extremeLift(top, liftVariance) + extremeLift(bottom, liftVariance);
  if (!(lift <= raw / 5)) return null;
  const difference = top.weights.map((w, i) => w - (bottom.weights[i] ?? 0));
  // a lift goes with the square of one normal error, whose variance is twice the square of its mean
  const lifts = 2 * (extremeLift(top, liftVariance) ** 2 + extremeLift(bottom, liftVariance) ** 2);
  return { value: raw - lift, variance: sampleVariance * unitVariance(fit, difference) + lifts, lift };
}
