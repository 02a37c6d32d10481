import { choleskyFactor } from '../signal/cholesky';

/**
 * Solves A x = b for a symmetric positive definite A (row by row, `size` × `size`), by Cholesky. Null when A is not
 * positive definite. A and b stay as they are. Cost: size³/6.
 */
export function solveSymmetric(a: Float64Array, b: Float64Array, size: number): Float64Array | null {
  const lower = choleskyFactor(a, size);
  if (!lower) return null;
  const x = Float64Array.from(b);
  for (let i = 0; i < size; i++) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k++) sum -= (lower[i * size + k] as number) * (x[k] as number);
    x[i] = sum / (lower[i * size + i] ?? 1);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < size; k++) sum -= (lower[k * size + i] as number) * (x[k] as number);
    x[i] = sum / (lower[i * size + i] ?? 1);
  }
  return x;
}
