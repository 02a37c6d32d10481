/**
 * Lower triangular root L of a covariance, row by row: L·Lᵀ is the covariance (Cholesky). Directions without any variance
 * are left at 0, so that a covariance that is only not negative has a root too.
 */
export function lowerRoot(covariance: ArrayLike<number>, size: number): Float64Array {
  const root = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = covariance[i * size + j] as number;
      for (let k = 0; k < j; k++) rest -= (root[i * size + k] as number) * (root[j * size + k] as number);
      if (i === j) root[i * size + i] = Math.sqrt(Math.max(0, rest));
      else {
        const pivot = root[j * size + j] as number;
        root[i * size + j] = pivot > 1e-12 * Math.sqrt(covariance[i * size + i] as number) ? rest / pivot : 0;
      }
    }
  }
  return root;
}
