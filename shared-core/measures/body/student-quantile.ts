/** Exact 0.975 quantiles for one to four degrees of freedom, where the expansion is not yet close. */
const exact = [12.706205, 4.302653, 3.182446, 2.776445];

/**
 * 97.5 % quantile of Student's t, for two-sided 95 % intervals: Cornish and Fisher's expansion in one over the degrees
 * of freedom; within 0.0005 of the exact value everywhere. Below one degree of freedom: infinity.
 *
 * @see Abramowitz & Stegun 26.7.5
 */
export function studentQuantile975(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom >= 1)) return Infinity;
  const known = exact[degreesOfFreedom - 1];
  if (known !== undefined) return known;
  const n = degreesOfFreedom;
  const z = 1.959963985;
  const g1 = (z ** 3 + z) / 4;
  const g2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const g3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  const g4 = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92_160;
  return z + g1 / n + g2 / n ** 2 + g3 / n ** 3 + g4 / n ** 4;
}
