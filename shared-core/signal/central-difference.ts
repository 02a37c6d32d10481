/** Slope of evenly spaced samples at one of them, per second, from its two neighbours; null at the ends and outside. */
export function centralDifference(samples: readonly number[], at: number, sampleHz: number): number | null {
  const before = samples[at - 1];
  const after = samples[at + 1];
  return before === undefined || after === undefined ? null : ((after - before) * sampleHz) / 2;
}

/** Standard deviation of that slope, for samples each off by its own error of standard deviation `sd`: σ · fs / √2. */
export function centralDifferenceSd(sd: number, sampleHz: number): number {
  return (sd * sampleHz) / Math.SQRT2;
}
