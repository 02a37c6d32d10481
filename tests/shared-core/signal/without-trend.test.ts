import { expect, it } from 'vitest';
import { withoutTrend } from '#core/signal/without-trend';

it('takes a straight line out of values and keeps their mean', () => {
  expect(withoutTrend([1, 2, 3, 4])).toEqual([2.5, 2.5, 2.5, 2.5]);
  const left = withoutTrend([0, 5, 1, 6]);
  expect(left.reduce((sum, each) => sum + each, 0) / 4).toBeCloseTo(3, 12);
  // slope by hand: Σ(i − 1.5)(v − 3) / Σ(i − 1.5)² = (4.5 − 1 − 1 + 4.5) / 5 = 1.4
  expect(left[0]).toBeCloseTo(0 + 1.5 * 1.4, 12);
});

it('leaves fewer than three values alone', () => {
  expect(withoutTrend([3, 8])).toEqual([3, 8]);
});
