export interface Peak {
  readonly index: number;
  readonly value: number;
  /** Height above the higher of the two lowest points that separate it from higher ground. */
  readonly prominence: number;
}

/**
 * Local maxima of evenly spaced samples with at least the given prominence, at least `minGap` samples apart (the more
 * prominent one stays). A flat top counts once, at its middle. Ends are never peaks. For troughs pass negated samples.
 * Used to propose events, never to place them.
 */
export function findPeaks(
  samples: readonly number[],
  options: { readonly minProminence: number; readonly minGap: number },
): readonly Peak[] {
  const found: Peak[] = [];
  const n = samples.length;
  let i = 1;
  while (i < n - 1) {
    const here = samples[i] as number;
    let end = i;
    while (end + 1 < n && samples[end + 1] === here) end += 1;
    const risesBefore = (samples[i - 1] ?? here) < here;
    const fallsAfter = end + 1 < n && (samples[end + 1] ?? here) < here;
    if (risesBefore && fallsAfter) {
      const index = (i + end) >> 1;
      const prominence = here - Math.max(saddle(samples, i, -1), saddle(samples, end, 1));
      if (prominence >= options.minProminence) found.push({ index, value: here, prominence });
    }
    i = end + 1;
  }
  const kept: Peak[] = [];
  for (const peak of [...found].sort((a, b) => b.prominence - a.prominence)) {
    if (kept.every((other) => Math.abs(other.index - peak.index) >= options.minGap)) kept.push(peak);
  }
  return kept.sort((a, b) => a.index - b.index);
}

function saddle(samples: readonly number[], from: number, step: 1 | -1): number {
  const top = samples[from] as number;
  let lowest = top;
  for (let i = from + step; i >= 0 && i < samples.length; i += step) {
    const y = samples[i] as number;
    if (y > top) break;
    lowest = Math.min(lowest, y);
  }
  return lowest;
}
