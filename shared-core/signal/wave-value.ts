import type { WaveFit } from './fit-wave';

/**
 * The weights by which a fit's coefficients make up its value, or a derivative of it, at one time. `drift` false
 * leaves out offset and slope, so what is read is the wave alone.
 *
 * @param order 0 the value, 1 its speed, 2 its acceleration, …
 */
export function waveWeights(fit: WaveFit, time: number, order: number, drift: boolean): number[] {
  const first = fit.hasSlope ? 2 : 1;
  // a plain row: for a dozen numbers a typed array costs more to make than to fill
  const weights = new Array<number>(fit.coefficients.length).fill(0);
  const tau = time - fit.centre;
  if (drift && order === 0) weights[0] = 1;
  if (drift && fit.hasSlope) weights[1] = order === 0 ? tau : order === 1 ? 1 : 0;
  const c1 = Math.cos(fit.angularFrequency * tau);
  const s1 = Math.sin(fit.angularFrequency * tau);
  let c = 1;
  let s = 0;
  for (let k = 1; k <= fit.harmonics; k++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    const size = power(k * fit.angularFrequency, order);
    // each derivative turns the phase on by a quarter: the cosine becomes −sine, −cosine, sine
    const flip = order % 4 === 1 || order % 4 === 2 ? -size : size;
    weights[first + 2 * k - 2] = flip * (order % 2 === 0 ? c : s);
    weights[first + 2 * k - 1] = (order % 4 < 2 ? size : -size) * (order % 2 === 0 ? s : c);
  }
  return weights;
}

/** Weighted sum of a fit's coefficients. */
export function weighted(fit: WaveFit, weights: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += (weights[i] as number) * (fit.coefficients[i] as number);
  return sum;
}

/** Variance of a weighted sum of coefficients for samples of variance 1. */
export function unitVariance(fit: WaveFit, weights: readonly number[]): number {
  const p = weights.length;
  const { unitCovariance } = fit;
  let sum = 0;
  for (let a = 0; a < p; a++) {
    const wa = weights[a] as number;
    if (wa === 0) continue;
    // the covariance is the same on both sides of its diagonal
    let row = ((weights[a] as number) * (unitCovariance[a * p + a] as number)) / 2;
    for (let b = 0; b < a; b++) row += (weights[b] as number) * (unitCovariance[a * p + b] as number);
    sum += 2 * wa * row;
  }
  return sum;
}

/**
 * The step of Newton's search for where the wave's derivative of `order` vanishes, the wave's offset and slope left
 * aside; null where the next derivative vanishes itself.
 */
export function newtonStep(fit: WaveFit, time: number, order: number): number | null {
  const first = fit.hasSlope ? 2 : 1;
  const tau = time - fit.centre;
  const c1 = Math.cos(fit.angularFrequency * tau);
  const s1 = Math.sin(fit.angularFrequency * tau);
  const even = order % 2 === 0;
  let c = 1;
  let s = 0;
  let here = 0;
  let slope = 0;
  for (let k = 1; k <= fit.harmonics; k++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    const a = fit.coefficients[first + 2 * k - 2] as number;
    const b = fit.coefficients[first + 2 * k - 1] as number;
    const omega = k * fit.angularFrequency;
    const size = power(omega, order);
    const along = a * c + b * s;
    const across = b * c - a * s;
    here += size * (even ? along : across);
    slope += size * omega * (even ? across : -along);
  }
  // signs that both derivatives share don't matter to the step
  return slope === 0 ? null : -here / slope;
}

/** Value of the fitted wave, or of a derivative of it, at one time. */
export function waveValue(fit: WaveFit, time: number, order = 0, drift = true): number {
  const first = fit.hasSlope ? 2 : 1;
  const tau = time - fit.centre;
  let sum = 0;
  if (drift && order === 0) sum += fit.coefficients[0] as number;
  if (drift && fit.hasSlope && order < 2) sum += (fit.coefficients[1] as number) * (order === 0 ? tau : 1);
  const c1 = Math.cos(fit.angularFrequency * tau);
  const s1 = Math.sin(fit.angularFrequency * tau);
  let c = 1;
  let s = 0;
  for (let k = 1; k <= fit.harmonics; k++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    const a = fit.coefficients[first + 2 * (k - 1)] as number;
    const b = fit.coefficients[first + 2 * (k - 1) + 1] as number;
    // each derivative turns cosine into minus sine and sine into cosine
    const turned = order % 2 === 0 ? a * c + b * s : b * c - a * s;
    sum += (order % 4 < 2 ? 1 : -1) * power(k * fit.angularFrequency, order) * turned;
  }
  return sum;
}

/** A whole power by repeated multiplication: orders are small, and the general power is far slower. */
export function power(base: number, exponent: number): number {
  let product = 1;
  for (let i = 0; i < exponent; i++) product *= base;
  return product;
}
