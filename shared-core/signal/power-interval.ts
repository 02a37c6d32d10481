import { z95 } from '../uncertainty/normal-quantile';

/** A power Σ w c² of normal coefficients seen with noise: what it is in truth. */
export interface PowerEstimate {
  /** What was seen less the noise's own power: right on average, below 0 at times. */
  readonly value: number;
  /** 95 % interval of the true power, never below 0 and never empty. */
  readonly low: number;
  readonly high: number;
}

/**
 * True power of a vector seen with noise of any covariance. The power seen is spread the wider the more of it there is, so
 * its interval is no ± something: it holds each power s ≥ 0 by which what was seen lies between the 2.5 and 97.5 %
 * quantiles. Those are made from the first three moments of a quadratic form of normal values. How the truth is shared among
 * the coefficients is taken from what was seen.
 *
 * @param coefficients as seen, noise and all
 * @param weights w of each, ≥ 0
 * @param covariance of their noise, row by row
 * @see Imhof 1961, Biometrika 48:419–426, § 3 (three moments, after Pearson; from memory)
 */
export function powerInterval(
  coefficients: readonly number[],
  weights: readonly number[],
  covariance: ArrayLike<number>,
): PowerEstimate {
  const p = coefficients.length;
  // M = covariance × weights; its powers' traces and their forms in what was seen make the moments
  const times = (row: readonly number[]): number[] =>
    Array.from({ length: p }, (_, i) => {
      let sum = 0;
      for (let j = 0; j < p; j++)
        sum += (covariance[i * p + j] as number) * (weights[j] as number) * (row[j] as number);
      return sum;
    });
  const form = (row: readonly number[]): number =>
    row.reduce((sum, each, i) => sum + (weights[i] as number) * (coefficients[i] as number) * each, 0);
  const traces = [0, 0, 0];
  for (let i = 0; i < p; i++) {
    let row: readonly number[] = coefficients.map((_, j) => (i === j ? 1 : 0));
    for (let r = 0; r < traces.length; r++) {
      row = times(row);
      traces[r] = (traces[r] as number) + (row[i] as number);
    }
  }
  const [t1, t2, t3] = traces as [number, number, number];
  const seen = form(coefficients);
  const once = times(coefficients);
  const along = seen > 0 ? form(once) / seen : 0;
  const twice = seen > 0 ? form(times(once)) / seen : 0;
  const quantile = (s: number, z: number): number => {
    const variance = 2 * t2 + 4 * s * along;
    const third = 8 * t3 + 24 * s * twice;
    if (!(variance > 0)) return s + t1;
    const freedom = (8 * variance ** 3) / third ** 2;
    return s + t1 + Math.sqrt(variance / (2 * freedom)) * (chiSquareQuantile(freedom, z) - freedom);
  };
  const value = seen - t1;
  const spread = (s: number): number => Math.sqrt(2 * t2 + 4 * Math.max(0, s) * along);
  const most = Math.max(0, value) + 8 * spread(value) + 64 * along;
  // less power than the noise has by itself is read as none: how little there was says nothing about the truth
  const least = Math.max(seen, t1);
  return {
    value,
    low: solve((s) => quantile(s, z95), seen, most),
    high: solve((s) => quantile(s, -z95), least, most),
  };
}

/** Where a rising function of s ≥ 0 comes to `target`; 0 where it begins above it. */
function solve(of: (s: number) => number, target: number, most: number): number {
  if (of(0) >= target) return 0;
  let [low, high] = [0, most];
  for (let i = 0; i < 60 && high - low > 1e-7 * high; i++) {
    const middle = (low + high) / 2;
    if (of(middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** @see Wilson, Hilferty 1931, Proc Natl Acad Sci 17:684–688 (from memory; within 1 % from two degrees of freedom on) */
function chiSquareQuantile(freedom: number, z: number): number {
  const part = 2 / (9 * freedom);
  return freedom * Math.max(0, 1 - part + z * Math.sqrt(part)) ** 3;
}
