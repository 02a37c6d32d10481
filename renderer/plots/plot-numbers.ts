import type { ReadingUnit } from '#core/measures/reading';

/** A unit as plots and tables print it. */
export const unitText = (unit: ReadingUnit): string => (unit === 'ratio' || unit === 'count' ? '' : unit);

/** Prints values of one row alike: three figures of the largest, a true minus, at most three decimals. */
export function plotDigits(values: readonly number[]): (value: number) => string {
  const largest = Math.max(1e-9, ...values.map(Math.abs));
  const digits = Math.max(0, Math.min(3, 2 - Math.floor(Math.log10(largest))));
  return (value) => value.toFixed(digits).replace('-', '−');
}
