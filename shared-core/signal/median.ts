import { median as middleOf } from 'd3-array';

/** The value in the middle; of an even number, the mean of the two in the middle. Throws on none. */
export function median(values: readonly number[]): number {
  const middle = middleOf(values);
  if (middle === undefined) throw new RangeError('no values have no median');
  return middle;
}
