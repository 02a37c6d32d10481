import { choleskyFactor } from './cholesky';

/**
 * Inverse of a small symmetric positive definite matrix, row by row; only the lower half is read.
 *
 * @param lower the matrix, row by row: the entries above the diagonal are not looked at
 * @returns null when it is not positive definite. Cost: cubic in `size`.
 */
export function invertPositive(lower: Float64Array, size: number): Float64Array | null {
  const factor = choleskyFactor(lower, size);
  if (!factor) return null;
  const inverse = inverseOfLower(factor, size);
  const out = new Float64Array(size * size);
  for (let a = 0; a < size; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let i = a; i < size; i++)
        sum += (inverse[i * size + a] as number) * (inverse[i * size + b] as number);
      if (!Number.isFinite(sum)) return null;
      out[a * size + b] = sum;
      out[b * size + a] = sum;
    }
  }
  return out;
}

/** Inverse of a lower triangle, itself one. */
function inverseOfLower(factor: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let column = 0; column < size; column++) {
    inverse[column * size + column] = 1 / (factor[column * size + column] as number);
    for (let row = column + 1; row < size; row++) {
      let sum = 0;
      for (let i = column; i < row; i++)
        sum -= (factor[row * size + i] as number) * (inverse[i * size + column] as number);
      inverse[row * size + column] = sum / (factor[row * size + row] as number);
    }
  }
  return inverse;
}
