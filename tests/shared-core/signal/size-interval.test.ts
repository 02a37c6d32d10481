import { describe, expect, it } from 'vitest';
import { sizeInterval, trueSize } from '#core/signal/size-interval';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import reference from '../../reference/size_interval.json';

describe('the interval of a size seen with noise', () => {
  it('is that of SciPy’s Rice density, straight between its rows and in any unit', () => {
    for (const { directions, rows } of reference.tables)
      for (const [seen = 0, low = 0, high = 0] of rows.slice(0, -1)) {
        const found = sizeInterval(0.01 * seen, 0.01, directions === 2 ? 2 : 4);
        // rows are rounded to a thousandth of a standard deviation
        expect(found.low).toBeCloseTo(0.01 * low, 4);
        expect(found.high).toBeCloseTo(0.01 * high, 4);
      }
  });

  it('holds any true size 95 times in 100, none and a big one too', () => {
    const random = seeded(20_260_001);
    for (const directions of [2, 4] as const)
      for (const size of [0, 0.3, 0.8, 1.5, 2.4, 3.5, 5, 8]) {
        let held = 0;
        const draws = 10_000;
        for (let i = 0; i < draws; i++) {
          const across = Array.from({ length: directions - 1 }, () => normal(random));
          const { low, high } = sizeInterval(Math.hypot(size + normal(random), ...across), 1, directions);
          if (low <= size && size <= high) held += 1;
        }
        // four standard errors of the draw
        expect(Math.abs(held / draws - 0.95), String(size)).toBeLessThan(0.002 + 4 * 0.00218);
      }
  });

  it('never closes, never goes below nothing, and holds the value read', () => {
    let bad = 0;
    for (const directions of [2, 4] as const)
      for (let seen = 0; seen < 12; seen += 0.01) {
        const { low, high } = sizeInterval(seen, 1, directions);
        const value = trueSize(seen, 1, directions);
        if (!(low >= 0 && high - low > 1 && value >= low && value <= high)) bad += 1;
      }
    expect(bad).toBe(0);
  });
});
