/** First index of a rising row whose value is at or after `value`, by halving; the row's length where there is none. */
export function firstAtOrAfter(row: readonly number[], value: number): number {
  let low = 0;
  let high = row.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
