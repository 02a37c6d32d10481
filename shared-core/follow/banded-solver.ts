/**
 * A symmetric positive definite matrix of which only a band along the diagonal is not zero: row i holds columns
 * i − band to i, so place (i, j) lies at `i * (band + 1) + j − i + band`.
 */
export interface BandedMatrix {
  readonly size: number;
  readonly band: number;
  readonly values: Float64Array;
}

export function bandedMatrix(size: number, band: number): BandedMatrix {
  return { size, band, values: new Float64Array(size * (band + 1)) };
}

/** Adds to one place and, since it is symmetric, to its mirror. Outside the band is a bug. */
export function addBanded({ band, values }: BandedMatrix, i: number, j: number, value: number): void {
  const row = Math.max(i, j);
  const at = row * (band + 1) + Math.min(i, j) - row + band;
  values[at] = (values[at] as number) + value;
}

/**
 * The lower Cholesky factor, in the same layout; null when the matrix is not positive definite. The matrix stays.
 * Cost: size · band².
 */
export function factorBanded({ size, band, values }: BandedMatrix): BandedMatrix | null {
  const wide = band + 1;
  const lower = values.slice();
  for (let i = 0; i < size; i++) {
    const row = i * wide + band - i;
    const first = Math.max(0, i - band);
    for (let j = first; j <= i; j++) {
      const other = j * wide + band - j;
      let sum = lower[row + j] as number;
      for (let k = Math.max(first, j - band); k < j; k++)
        sum -= (lower[row + k] as number) * (lower[other + k] as number);
      if (i === j) {
        if (!(sum > 0)) return null;
        lower[row + j] = Math.sqrt(sum);
      } else lower[row + j] = sum / (lower[other + j] ?? 1);
    }
  }
  return { size, band, values: lower };
}

/** Solves A x = b with the factor of A. Cost: size · band. */
export function solveBanded({ size, band, values }: BandedMatrix, b: Float64Array): Float64Array {
  const wide = band + 1;
  const x = Float64Array.from(b);
  for (let i = 0; i < size; i++) {
    const row = i * wide + band - i;
    let sum = x[i] as number;
    for (let k = Math.max(0, i - band); k < i; k++) sum -= (values[row + k] as number) * (x[k] as number);
    x[i] = sum / (values[row + i] ?? 1);
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = i * wide + band - i;
    const value = (x[i] as number) / (values[row + i] ?? 1);
    x[i] = value;
    for (let k = Math.max(0, i - band); k < i; k++)
      x[k] = (x[k] as number) - (values[row + k] as number) * value;
  }
  return x;
}

/**
 * The inverse within the band, from the factor (Takahashi, Fagan and Chen 1973, from memory): from the last row up, each
 * entry follows from those after it. Cost: size · band².
 */
export function invertBanded({ size, band, values }: BandedMatrix): BandedMatrix {
  const wide = band + 1;
  const inverse = bandedMatrix(size, band);
  const out = inverse.values;
  // the column of the factor below each diagonal place, gathered once
  const column = new Float64Array(band);
  for (let j = size - 1; j >= 0; j--) {
    const last = Math.min(size - 1, j + band);
    for (let k = j + 1; k <= last; k++) column[k - j - 1] = values[k * wide + band - k + j] as number;
    const own = values[j * wide + band] ?? 1;
    for (let i = last; i > j; i--) {
      let sum = 0;
      for (let k = j + 1; k <= last; k++) {
        const at = k > i ? k * wide + band - k + i : i * wide + band - i + k;
        sum += (out[at] as number) * (column[k - j - 1] as number);
      }
      out[i * wide + band - i + j] = -sum / own;
    }
    let sum = 0;
    for (let k = j + 1; k <= last; k++)
      sum += (out[k * wide + band - k + j] as number) * (column[k - j - 1] as number);
    out[j * wide + band] = (1 / own - sum) / own;
  }
  return inverse;
}
