import { turnedTo } from '../measures/body/points/angles';
import type { ComputedReading } from '../measures/reading';
import { studentWidening } from '../uncertainty/student-quantile';
import { z95 } from '../uncertainty/normal-quantile';

/** Second swim minus first, of one reading. */
export interface ReadingDifference {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** 'clear': zero lies outside the 95 % interval. */
  readonly verdict: 'clear' | 'within-error';
}

/**
 * Difference of one reading between two swims, with its 95 % interval from marking. Where both were filmed with one
 * scene set-up, the scale's error is common to both and only its effect on the difference itself is left; else both
 * scale terms count in full. Angles differ by half a turn at most. Null when the units differ or the readings are not the same.
 */
export function readingDifference(
  first: ComputedReading,
  second: ComputedReading,
  sameSetUp: boolean,
): ReadingDifference | null {
  if (first.id !== second.id || first.unit !== second.unit) return null;
  // directions go round: from 170° to −170° is 20°, not 340°
  const value = first.unit === '°' ? turnedTo(0, second.value - first.value) : second.value - first.value;
  // a common scale error stretches both values by one share: what is left in the difference is that share of it
  const stretch = (of: ComputedReading): number => Math.sign(of.value) * Math.sqrt(of.sharedVariance);
  const common = (stretch(second) - stretch(first)) ** 2;
  const scale = sameSetUp ? common : first.sharedVariance + second.sharedVariance;
  // one coach's marking error stands behind both swims: two of them know it no better than the one that knows it worse
  const freedom = Math.min(first.freedom ?? Infinity, second.freedom ?? Infinity);
  const half = studentWidening(freedom) * z95 * Math.sqrt(first.ownVariance + second.ownVariance + scale);
  const low = value - half;
  const high = value + half;
  return { value, low, high, verdict: low > 0 || high < 0 ? 'clear' : 'within-error' };
}
