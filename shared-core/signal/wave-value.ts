import type { WaveFit } from './fit-wave';

/**
 * The weights by which a fit's coefficients make up its value, or a derivative of it, at one time. `drift` false
 * leaves out offset and slope, so what is read is the wave alone.
 *
 * @param order 0 the value, 1 its speed, 2 its acceleration, …
 */
export function waveWeights(fit: WaveFit, time: number, order: number, drift: boolean): Float64Array {
  const first = fit.hasSlope ? 2 : 1;
  const weights = new Float64Array(fit.coefficients.length);
  const tau = time - fit.centre;
  if (drift && order === 0) weights[0] = 1;
  if (drift && fit.hasSlope) weights[1] = order === 0 ? tau : order === 1 ? 1 : 0;
  for (let k = 1; k <= fit.harmonics; k++) {
    const omega = k * fit.angularFrequency;
    const size = omega ** order;
    // each derivative turns the phase on by a quarter
    const angle = omega * tau + (order * Math.PI) / 2;
    weights[first + 2 * (k - 1)] = size * Math.cos(angle);
    weights[first + 2 * (k - 1) + 1] = size * Math.sin(angle);
  }
  return weights;
}

/** Weighted sum of a fit's coefficients. */
export function weighted(fit: WaveFit, weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += (weights[i] ?? 0) * (fit.coefficients[i] ?? 0);
  return sum;
}

/** Variance of a weighted sum of coefficients for samples of variance 1. */
export function unitVariance(fit: WaveFit, weights: Float64Array): number {
  const p = weights.length;
  let sum = 0;
  for (let a = 0; a < p; a++) {
    const wa = weights[a] ?? 0;
    if (wa === 0) continue;
    for (let b = 0; b < p; b++) sum += wa * (weights[b] ?? 0) * (fit.unitCovariance[a * p + b] ?? 0);
  }
  return sum;
}

/** Value of the fitted wave, or of a derivative of it, at one time. */
export function waveValue(fit: WaveFit, time: number, order = 0, drift = true): number {
  const first = fit.hasSlope ? 2 : 1;
  const tau = time - fit.centre;
  let sum = 0;
  if (drift && order === 0) sum += fit.coefficients[0] ?? 0;
  if (drift && fit.hasSlope && order < 2) sum += (fit.coefficients[1] ?? 0) * (order === 0 ? tau : 1);
  const c1 = Math.cos(fit.angularFrequency * tau);
  const s1 = Math.sin(fit.angularFrequency * tau);
  let c = 1;
  let s = 0;
  for (let k = 1; k <= fit.harmonics; k++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    const a = fit.coefficients[first + 2 * (k - 1)] ?? 0;
    const b = fit.coefficients[first + 2 * (k - 1) + 1] ?? 0;
    // each derivative turns cosine into minus sine and sine into cosine
    const turned = order % 2 === 0 ? a * c + b * s : b * c - a * s;
    sum += (order % 4 < 2 ? 1 : -1) * (k * fit.angularFrequency) ** order * turned;
  }
  return sum;
}
