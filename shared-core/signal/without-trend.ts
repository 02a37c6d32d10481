/**
 * Values one after the other, with the straight line through them by least squares taken out and their mean kept; as they
 * are where there are fewer than three.
 */
export function withoutTrend(values: readonly number[]): readonly number[] {
  const n = values.length;
  if (n < 3) return values;
  const mean = values.reduce((sum, each) => sum + each, 0) / n;
  const middle = (n - 1) / 2;
  let across = 0;
  let along = 0;
  values.forEach((value, i) => {
    across += (i - middle) * (value - mean);
    along += (i - middle) ** 2;
  });
  return values.map((value, i) => value - (across / along) * (i - middle));
}
