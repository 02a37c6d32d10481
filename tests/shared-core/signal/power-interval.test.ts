import { describe, expect, it } from 'vitest';
import { powerInterval } from '#core/signal/power-interval';
import { normal, seeded } from '../../../sample-clips/model/seeded';

const plain = (p: number, variance = 1): number[] =>
  Array.from({ length: p * p }, (_, i) => (i % (p + 1) === 0 ? variance : 0));

describe('the interval of a power seen with noise', () => {
  it('takes the noise’s own power off: all of it, whatever its covariance', () => {
    // 3² + 2·4² less 1 · 0.5 + 2 · 0.25
    const found = powerInterval([3, 4], [1, 2], [0.5, 0.2, 0.2, 0.25]);
    expect(found.value).toBeCloseTo(41 - 1, 12);
  });

  it('becomes the square of a normal interval where noise is small', () => {
    const { low, high } = powerInterval([1000, 0, 0, 0], [1, 1, 1, 1], plain(4));
    expect(Math.sqrt(low)).toBeCloseTo(1000 - 1.959964, 2);
    expect(Math.sqrt(high)).toBeCloseTo(1000 + 1.959964, 2);
  });

  it('begins to leave nothing out where the noise alone reaches so far once in forty times', () => {
    // 97.5 % of chi-square with 4 degrees of freedom: 11.143 (tables of any textbook)
    expect(powerInterval([Math.sqrt(11.0), 0, 0, 0], [1, 1, 1, 1], plain(4)).low).toBe(0);
    expect(powerInterval([Math.sqrt(11.3), 0, 0, 0], [1, 1, 1, 1], plain(4)).low).toBeGreaterThan(0);
  });

  it('holds a true power about 95 times in 100, from far below the noise to far above it, weights uneven and noise tied', () => {
    const random = seeded(20_260_002);
    const weights = [1, 1, 4, 4, 9, 9];
    const tie = 0.4;
    const covariance = weights.flatMap((_, i) => weights.map((__, j) => (i === j ? 1 + tie ** 2 : tie ** 2)));
    for (const size of [0.3, 1, 2, 4, 8, 20]) {
      const truth = [0, 0, size, size / 2, 0, 0];
      const power = truth.reduce((sum, c, i) => sum + (weights[i] ?? 0) * c * c, 0);
      const draws = 1500;
      let held = 0;
      for (let i = 0; i < draws; i++) {
        const common = tie * normal(random);
        const { low, high } = powerInterval(
          truth.map((c) => c + common + normal(random)),
          weights,
          covariance,
        );
        if (low <= power && power <= high) held += 1;
      }
      // four standard errors of the draw; where truth hides in noise it may hold more, never less
      expect(held / draws, String(size)).toBeGreaterThan(0.94 - 4 * 0.0056);
      expect(held / draws, String(size)).toBeLessThan(size < 4 ? 1 : 0.96 + 4 * 0.0056);
    }
  });

  it('never closes', () => {
    for (const seen of [0, 0.001, 0.5, 3, 50]) {
      const { low, high, value } = powerInterval([seen, 0], [2, 2], plain(2, 0.01));
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeGreaterThan(Math.max(low, value));
    }
  });
});
