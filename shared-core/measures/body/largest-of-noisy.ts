import { errorFunction } from 'simple-statistics';

/**
 * Mean of the largest of independent normal values with one standard deviation, by Clark's pairwise moments. Values
 * more than five standard deviations below the largest can't win and are left out.
 *
 * @see Clark 1961, Operations Research 9:145–162, "The greatest of a finite set of random variables"
 */
export function meanOfLargest(values: readonly number[], sd: number): number {
  if (values.length === 0) return 0;
  let top = -Infinity;
  for (const value of values) if (value > top) top = value;
  if (!(sd > 0)) return top;
  const reach = top - 5 * sd;
  const rivals: number[] = [];
  for (const value of values) {
    if (value < reach) continue;
    // in falling order
    let at = rivals.length;
    while (at > 0 && (rivals[at - 1] as number) < value) at -= 1;
    for (let i = rivals.length; i > at; i--) rivals[i] = rivals[i - 1] as number;
    rivals[at] = value;
  }
  let mean = top;
  let variance = sd * sd;
  for (let i = 1; i < rivals.length; i++) {
    const value = rivals[i] as number;
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
