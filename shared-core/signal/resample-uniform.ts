import { median } from './median';
import { naturalSpline } from './cubic-spline';

export interface UniformSamples {
  readonly startTime: number;
  readonly sampleHz: number;
  readonly samples: readonly number[];
}

/**
 * Put samples taken at rising but uneven times on an even grid, by natural cubic spline, so that a recursive filter
 * may be used. The grid starts at the first time and ends at or before the last: nothing is made up outside.
 * `sampleHz` defaults to one over the median gap. Fewer than two samples come back as they are, at 1 Hz.
 */
export function resampleUniform(
  times: readonly number[],
  samples: readonly number[],
  sampleHz = medianRate(times),
): UniformSamples {
  const startTime = times[0] ?? 0;
  if (times.length < 2) return { startTime, sampleHz: 1, samples: [...samples] };
  const curve = naturalSpline(times, samples);
  const span = (times.at(-1) ?? startTime) - startTime;
  // a hair of slack keeps the last sample when the gaps are even but not exact in binary
  const count = Math.floor(span * sampleHz + 1e-6) + 1;
  return {
    startTime,
    sampleHz,
    samples: Array.from({ length: count }, (_, i) => curve(startTime + i / sampleHz)),
  };
}

/** One over the median gap between rising times; 1 when there is no gap. */
export function medianRate(times: readonly number[]): number {
  if (times.length < 2) return 1;
  const gap = median(times.slice(1).map((t, i) => t - (times[i] as number)));
  return gap > 0 ? 1 / gap : 1;
}
