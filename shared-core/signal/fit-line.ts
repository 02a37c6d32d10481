export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  /** Variance of the slope for samples of unit variance (equal weights), or for variances 1/weight. */
  readonly slopeVariance: number;
}

/**
 * Least-squares straight line y = intercept + slope · x, optionally weighted (weight = 1/variance).
 * Null with fewer than two points, or when all x are equal.
 */
export function fitLine(
  x: readonly number[],
  y: readonly number[],
  weights?: readonly number[],
): LineFit | null {
  const n = Math.min(x.length, y.length);
  let total = 0;
  let meanX = 0;
  let meanY = 0;
  for (let i = 0; i < n; i++) {
    const w = weights?.[i] ?? 1;
    total += w;
    meanX += w * (x[i] as number);
    meanY += w * (y[i] as number);
  }
  if (n < 2 || !(total > 0)) return null;
  meanX /= total;
  meanY /= total;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i++) {
    const w = weights?.[i] ?? 1;
    const dx = (x[i] as number) - meanX;
    xx += w * dx * dx;
    xy += w * dx * ((y[i] as number) - meanY);
  }
  // spread below rounding error of the mean counts as none
  if (!(xx > total * (1e-12 * Math.max(1, Math.abs(meanX))) ** 2)) return null;
  const slope = xy / xx;
  return { slope, intercept: meanY - slope * meanX, slopeVariance: 1 / xx };
}
