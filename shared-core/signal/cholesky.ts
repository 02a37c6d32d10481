/**
 * Lower triangular factor L of a symmetric positive definite matrix, row by row: L·Lᵀ is the matrix. Only its lower half
 * is read, and it stays as it is. Own lines, since hundreds of small systems are solved for one swim and a matrix object
 * for each costs more than the sums.
 *
 * @returns null when the matrix is not positive definite. Cost: cubic in `size`.
 */
export function choleskyFactor(lower: ArrayLike<number>, size: number): Float64Array | null {
  const factor = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let rest = lower[row * size + column] as number;
      for (let i = 0; i < column; i++)
        rest -= (factor[row * size + i] as number) * (factor[column * size + i] as number);
      if (column < row) {
        factor[row * size + column] = rest / (factor[column * size + column] as number);
        continue;
      }
      if (!(rest > 0)) return null;
      factor[row * size + row] = Math.sqrt(rest);
    }
  }
  return factor;
}
