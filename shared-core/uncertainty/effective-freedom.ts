/** One part of a variance, and the degrees of freedom it was estimated with; infinity where it is known. */
export interface VariancePart {
  readonly variance: number;
  readonly freedom: number;
}

/**
 * Degrees of freedom of a sum of variances, each estimated with its own: (Σ v)² / Σ v² / ν. Infinity where none of them
 * was estimated.
 *
 * @param known variance beside them that is not estimated
 * @see Welch 1947, Biometrika 34:28–35; Satterthwaite 1946, Biometrics Bull 2:110–114
 */
export function effectiveFreedom(parts: readonly VariancePart[], known = 0): number {
  let sum = known;
  let squares = 0;
  for (const { variance, freedom } of parts) {
    sum += variance;
    squares += variance ** 2 / freedom;
  }
  return squares > 0 ? sum ** 2 / squares : Infinity;
}
