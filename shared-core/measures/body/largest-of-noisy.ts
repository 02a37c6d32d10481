import { errorFunction } from 'simple-statistics';

/**
 * Mean of the largest of independent normal values with one standard deviation, by Clark's pairwise moments. Values
 * more than five standard deviations below the largest can't win and are left out.
 *
 * @see Clark 1961, Operations Research 9:145–162, "The greatest of a finite set of random variables"
 */
export function meanOfLargest(values: readonly number[], sd: number): number {
  const top = Math.max(...values);
  if (!(sd > 0) || values.length === 0) return values.length === 0 ? 0 : top;
  const rivals = values.filter((value) => top - value <= 5 * sd).sort((a, b) => b - a);
  let mean = top;
  let variance = sd * sd;
  for (const value of rivals.slice(1)) {
    const spread = Math.sqrt(variance + sd * sd);
    const alpha = (mean - value) / spread;
    const phi = Math.exp((-alpha * alpha) / 2) / Math.sqrt(2 * Math.PI);
    const share = normalBelow(alpha);
    const first = mean * share + value * (1 - share) + spread * phi;
    const second =
      (mean * mean + variance) * share +
      (value * value + sd * sd) * (1 - share) +
      (mean + value) * spread * phi;
    mean = first;
    variance = Math.max(1e-300, second - first * first);
  }
  return mean;
}

const normalBelow = (z: number): number => (1 + errorFunction(z / Math.SQRT2)) / 2;
