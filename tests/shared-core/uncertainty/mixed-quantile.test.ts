import { describe, expect, it } from 'vitest';
import { mixedQuantile975 } from '#core/uncertainty/mixed-quantile';
import { studentQuantile975 } from '#core/uncertainty/student-quantile';
import { normal, seeded } from '../../../sample-clips/model/seeded';

describe('the quantile of an estimated and a known variance together', () => {
  it('is Student’s where nothing is known, and the normal one where nothing is estimated', () => {
    expect(mixedQuantile975(2, 3, 0)).toBeCloseTo(studentQuantile975(3), 12);
    expect(mixedQuantile975(0, 3, 2)).toBeCloseTo(1.959964, 5);
  });

  it('weighs the two by their variances', () => {
    // t of 4 degrees is 2.776445 (any printed table of Student's t)
    expect(mixedQuantile975(1, 4, 3)).toBeCloseTo((2.776445 + 3 * 1.959964) / 4, 5);
  });

  it.each([
    [1, 1],
    [2, 1],
    [2, 0.3],
    [4, 3],
  ])('holds the truth at least 94 times in 100 with %i degrees of freedom and %f known', (freedom, known) => {
    const random = seeded(975);
    const draws = 20_000;
    let held = 0;
    for (let i = 0; i < draws; i++) {
      let squares = 0;
      for (let k = 0; k < freedom; k++) squares += normal(random) ** 2;
      const spread = squares / freedom;
      const error = normal(random) + Math.sqrt(known) * normal(random);
      if (Math.abs(error) <= mixedQuantile975(spread, freedom, known) * Math.sqrt(spread + known)) held++;
    }
    expect(held / draws).toBeGreaterThan(0.94);
    expect(held / draws).toBeLessThan(0.98);
  });
});
