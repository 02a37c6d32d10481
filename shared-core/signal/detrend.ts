import { fitLine } from './fit-line';

/**
 * Take the least-squares straight line off samples at any times. Samples that admit no line (fewer than two, or all
 * at one time) lose their mean only.
 */
export function detrend(times: readonly number[], samples: readonly number[]): readonly number[] {
  const line = fitLine(times, samples);
  if (line) return samples.map((y, i) => y - line.intercept - line.slope * (times[i] as number));
  const mean = samples.reduce((sum, y) => sum + y, 0) / Math.max(1, samples.length);
  return samples.map((y) => y - mean);
}
