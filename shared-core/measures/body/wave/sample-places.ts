import type { WaveFit } from '../../../signal/fit-wave';

/**
 * How many times the variance of a wave's size may be that of samples evenly spread: above it, waves that are not fitted leak
 * into those that are. Set on body lines at marked events only, which come at the same few places of every cycle.
 */
export const bunchedAtMost = 2;

/** The most that uneven places of the samples in the cycle cost a wave that must be told, in variance. */
export function bunched(
  { unitCovariance, coefficients, hasSlope }: WaveFit,
  waves: number,
  samples: number,
): number {
  const p = coefficients.length;
  const first = hasSlope ? 2 : 1;
  const costs = Array.from({ length: waves }, (_, i) => {
    const [a, b] = [first + 2 * i, first + 2 * i + 1];
    return ((unitCovariance[a * p + a] ?? 0) + (unitCovariance[b * p + b] ?? 0)) * (samples / 4);
  });
  return Math.max(...costs);
}

/**
 * Part of a kick that may go without a body line in all cycles together: half of the shortest wave that must be told is never
 * seen then. Set on body lines at marked events only, which come at the same few places of every cycle.
 */
export const widest = 0.37;

/** The longest part of the cycle in which no sample falls, cycles laid over one another, as a share of the cycle. */
export function widestGap(
  times: readonly number[],
  from: number,
  to: number,
  start: number,
  period: number,
): number {
  const bins = 64;
  const seen = new Uint8Array(bins);
  for (let i = from; i < to; i++) {
    const turns = ((times[i] as number) - start) / period;
    seen[Math.min(bins - 1, Math.floor(bins * (turns - Math.floor(turns))))] = 1;
  }
  let [longest, run] = [0, 0];
  for (let i = 0; i < 2 * bins && run < bins; i++) {
    run = seen[i % bins] ? 0 : run + 1;
    longest = Math.max(longest, run);
  }
  return longest / bins;
}
