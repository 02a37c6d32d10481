import { studentQuantile975 } from '../uncertainty/student-quantile';

/** Repeats of one reading under one condition, summed up. */
interface Condition {
  readonly count: number;
  readonly mean: number;
  /** Sample variance over repeats, unit². */
  readonly variance: number;
}

/** Second condition minus first. */
export interface ConditionContrast {
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  /** Welch's degrees of freedom; need not be whole. */
  readonly degreesOfFreedom: number;
  readonly verdict: 'clear' | 'within-error';
  /**
   * Repeats per condition at which a difference as large as the seen one would be clear, were the spread to stay as it
   * is; null when that is more than `mostRepeats`.
   */
  readonly repeatsNeeded: number | null;
}

/** Beyond this many repeats a condition there is no practice to plan. Our default. */
export const mostRepeats = 200;

/**
 * Welch's 95 % interval of the difference of two conditions, each a list of one reading over repeats. Null when either
 * has fewer than two repeats, a value is not finite, or neither varies at all.
 *
 * @see Welch 1947, Biometrika 34:28–35 (from memory)
 */
export function conditionContrast(
  first: readonly number[],
  second: readonly number[],
): ConditionContrast | null {
  const a = summed(first);
  const b = summed(second);
  if (!a || !b || !(a.variance + b.variance > 0)) return null;
  const difference = b.mean - a.mean;
  const { half, degreesOfFreedom } = welch(a, b);
  const low = difference - half;
  const high = difference + half;
  return {
    difference,
    low,
    high,
    degreesOfFreedom,
    verdict: low > 0 || high < 0 ? 'clear' : 'within-error',
    repeatsNeeded: repeatsFor(Math.abs(difference), a, b),
  };
}

function summed(values: readonly number[]): Condition | null {
  const count = values.length;
  if (count < 2 || !values.every(Number.isFinite)) return null;
  const mean = values.reduce((sum, each) => sum + each, 0) / count;
  return { count, mean, variance: values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (count - 1) };
}

function welch(a: Condition, b: Condition): { half: number; degreesOfFreedom: number } {
  const p = a.variance / a.count;
  const q = b.variance / b.count;
  const degreesOfFreedom = (p + q) ** 2 / (p ** 2 / (a.count - 1) + q ** 2 / (b.count - 1));
  return { half: studentQuantile975(degreesOfFreedom) * Math.sqrt(p + q), degreesOfFreedom };
}

function repeatsFor(size: number, a: Condition, b: Condition): number | null {
  const clear = (count: number): boolean => welch({ ...a, count }, { ...b, count }).half < size;
  if (!clear(mostRepeats)) return null;
  let low = 2;
  let high = mostRepeats;
  // the interval narrows with every repeat, so the least count can be halved toward
  while (low < high) {
    const middle = (low + high) >> 1;
    if (clear(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
