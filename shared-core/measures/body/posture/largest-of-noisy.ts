/** Filled anew by each call: one is made for every posture of a swim. */
const largest: number[] = [];

/**
 * Mean of the largest of independent normal values with one standard deviation, by Clark's pairwise moments; with sign −1
 * that of the largest of the values with their sign changed. Values more than five standard deviations below the largest
 * can't win and are left out.
 *
 * @see Clark 1961, Operations Research 9:145–162, "The greatest of a finite set of random variables"
 */
export function meanOfLargest(values: readonly number[], sd: number, sign: 1 | -1 = 1): number {
  if (values.length === 0) return 0;
  let top = -Infinity;
  for (const value of values) if (sign * value > top) top = sign * value;
  if (!(sd > 0)) return top;
  const reach = top - 5 * sd;
  let count = 0;
  for (const each of values) {
    const value = sign * each;
    if (value < reach) continue;
    // in falling order
    let at = count;
    for (; at > 0 && (largest[at - 1] as number) < value; at--) largest[at] = largest[at - 1] as number;
    largest[at] = value;
    count += 1;
  }
  let mean = top;
  let variance = sd * sd;
  for (let i = 1; i < count; i++) {
    const value = largest[i] as number;
    const spread = Math.sqrt(variance + sd * sd);
    const alpha = (mean - value) / spread;
    const bell = Math.exp((-alpha * alpha) / 2);
    const phi = bell / rootOfTwoPi;
    const share = normalBelow(alpha, bell);
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

const rootOfTwoPi = Math.sqrt(2 * Math.PI);

/**
 * Share of the normal distribution below z, whose exp(−z²/2) is at hand already; within 1e-7.
 *
 * @see Abramowitz, Stegun 1964, Handbook of mathematical functions, 7.1.26
 */
function normalBelow(z: number, bell: number): number {
  const t = 1 / (1 + (0.3275911 * Math.abs(z)) / Math.SQRT2);
  const above =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    (bell / 2);
  return z < 0 ? above : 1 - above;
}
