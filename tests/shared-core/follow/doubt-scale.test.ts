import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doubtScale, withDoubtScaled } from '#core/follow/doubt-scale';
import { expectedErrorShare } from '#core/follow/expected-error';
import { normal, seeded } from '../../../sample-clips/model/seeded';

/** Answers of a film on which points err by `truth` times what is stated, each axis alike. */
const drawn = (truth: number, count: number, seed: number) => {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const confidence = 0.3 + 0.64 * random();
    const sd = truth * expectedErrorShare(confidence);
    return { confidence, offShare: Math.hypot(sd * normal(random), sd * normal(random)) };
  });
};

describe('doubt on this film', () => {
  it('is what was stated without answers, and where points err as stated or more', () => {
    expect(doubtScale([])).toBe(1);
    for (const seed of [1, 2, 3]) {
      expect(doubtScale(drawn(1, 60, seed))).toBeGreaterThan(0.85);
      expect(doubtScale(drawn(3, 60, seed))).toBe(1);
    }
  });

  it('comes to what points truly err by, as answers say so', () => {
    for (const seed of [4, 5, 6]) {
      const scale = doubtScale(drawn(0.6, 200, seed));
      expect(scale).toBeGreaterThan(0.52);
      expect(scale).toBeLessThan(0.68);
    }
  });

  it('shrinks with every right point, slowly, and never under its least', () => {
    const right = (count: number) =>
      doubtScale(Array.from({ length: count }, () => ({ confidence: 0.6, offShare: 0 })));
    // six rights weigh as much as what was thought before: √(6/12), a little more for the coach's own error
    expect(right(6)).toBeGreaterThan(Math.SQRT1_2);
    expect(right(6)).toBeLessThan(0.76);
    expect(right(1)).toBeGreaterThan(0.92);
    expect(right(500)).toBe(0.4);
  });

  it('makes points surer and none less sure, keeping their order', () => {
    const confidences = fc.array(fc.double({ min: 0.001, max: 0.999, noNaN: true }), { minLength: 2 });
    fc.assert(
      fc.property(confidences, fc.double({ min: 0.4, max: 1, noNaN: true }), (c, scale) => {
        const points = c.map((each): [number, number, number] => [1, 2, each]);
        const [run] = withDoubtScaled([{ landmark: 'toe', frame: 3, points }], scale);
        run?.points.forEach(([x, y, confidence], i) => {
          expect([x, y]).toEqual([1, 2]);
          expect(confidence).toBeGreaterThanOrEqual((c[i] ?? 0) - 1e-12);
        });
      }),
    );
  });
});
