import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addBanded, bandedMatrix, factorBanded, invertBanded, solveBanded } from '#core/follow/banded-solver';
import { blendSightings, type Sighting, varianceOfSightings } from '#core/follow/blend-sightings';
import { confidenceOfSd, sdOfConfidence, sureEnough } from '#core/follow/follow-confidence';
import { smoothTrack } from '#core/follow/smooth-track';
import { solveSymmetric } from '#core/follow/solve-symmetric';

const sighting = (x: number, more: Partial<Sighting> = {}): Sighting => ({
  at: { x, y: 0 },
  // about what laying all pictures together leaves of a body of 500 px
  variance: 0.25,
  residual: 0.3,
  ...more,
});

describe('smoothing a track', () => {
  it('leaves steady movement as it is, on uneven times too', () => {
    const times = [0, 0.016, 0.05, 0.066, 0.1];
    const values = times.map((t) => 3 + 40 * t);
    const { values: smooth } = smoothTrack(
      times,
      values,
      times.map(() => 1),
      10,
    );
    smooth.forEach((value, i) => {
      expect(value).toBeCloseTo(values[i] ?? 0, 4);
    });
  });

  it('gives the same forward and backward in time', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 3, maxLength: 12 }),
        (y) => {
          const times = y.map((_, i) => i / 60);
          const there = smoothTrack(
            times,
            y,
            y.map(() => 4),
            500,
          ).values;
          const back = smoothTrack(
            times,
            [...y].reverse(),
            y.map(() => 4),
            500,
          ).values;
          [...back].reverse().forEach((value, i) => {
            expect(value).toBeCloseTo(there[i] ?? 0, 3);
          });
        },
      ),
    );
  });

  it('bridges a missing sample on the straight way, and is less sure of it', () => {
    const times = [0, 1, 2, 3, 4].map((i) => i / 60);
    const { values, variances } = smoothTrack(
      times,
      [0, 1, 999, 3, 4],
      [0.01, 0.01, Infinity, 0.01, 0.01],
      2000,
    );
    expect(values[2]).toBeCloseTo(2, 1);
    expect(variances[2]).toBeGreaterThan(variances[1] ?? 0);
  });
});

describe('blending forward and backward', () => {
  it('stands on the mark it comes from', () => {
    expect(blendSightings(sighting(10), sighting(20), 0).x).toBe(10);
    expect(blendSightings(sighting(10), sighting(20), 1).x).toBe(20);
  });

  it('believes the one whose limbs still look as marked', () => {
    const at = blendSightings(sighting(10, { residual: 0.3 }), sighting(60, { residual: 0.9 }), 0.5);
    expect(at.x).toBeLessThan(11);
  });

  it('is the less sure the farther the two are apart', () => {
    const near = varianceOfSightings(sighting(10), sighting(11), sighting(10), 500);
    const far = varianceOfSightings(sighting(10), sighting(60), sighting(30), 500);
    expect(far).toBeGreaterThan(50 * near);
    expect(confidenceOfSd(Math.sqrt(near), 500)).toBeGreaterThan(sureEnough);
    expect(confidenceOfSd(Math.sqrt(far), 500)).toBeLessThan(0.5);
  });

  it('is not sure of what the pictures hold weakly, or what laying together moved far', () => {
    const [one, other] = [sighting(10), sighting(11)];
    const weak = varianceOfSightings(one, other, sighting(10, { variance: 5 }), 500);
    expect(confidenceOfSd(Math.sqrt(weak), 500)).toBeLessThan(sureEnough);
    const moved = varianceOfSightings(one, other, sighting(30), 500, { x: 10, y: 0 });
    expect(confidenceOfSd(Math.sqrt(moved), 500)).toBeLessThan(sureEnough);
  });

  it('is the less sure the stranger the limbs look where they were laid', () => {
    const [one, other] = [sighting(10), sighting(11)];
    const usual = varianceOfSightings(one, other, sighting(10), 500);
    const strange = varianceOfSightings(one, other, sighting(10, { residual: 1.1 }), 500);
    expect(strange).toBeGreaterThan(3 * usual);
  });
});

describe('confidence', () => {
  it('is the chance of lying within two percent of the body length', () => {
    // sd = the reach itself: 1 − e^(−1/2) = 0.3935
    expect(confidenceOfSd(10, 500)).toBeCloseTo(0.3935, 4);
    expect(confidenceOfSd(0, 500)).toBe(1);
  });

  it('keeps the standard deviation it stands for', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.5, max: 200, noNaN: true }), (sd) => {
        expect(sdOfConfidence(confidenceOfSd(sd, 500), 500)).toBeCloseTo(sd, 3);
      }),
    );
  });
});

it('solves symmetric systems, and refuses one that is not positive', () => {
  // 4x + y = 1, x + 3y = 2 → x = 1/11, y = 7/11
  const x = solveSymmetric(Float64Array.of(4, 1, 1, 3), Float64Array.of(1, 2), 2);
  expect(x?.[0]).toBeCloseTo(1 / 11, 12);
  expect(x?.[1]).toBeCloseTo(7 / 11, 12);
  expect(solveSymmetric(Float64Array.of(1, 2, 2, 1), Float64Array.of(1, 1), 2)).toBeNull();
});

it('solves and inverts a banded matrix as the whole one would', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 60, maxLength: 60 }),
      (u) => {
        const [size, band] = [9, 3];
        const matrix = bandedMatrix(size, band);
        const whole = new Float64Array(size * size);
        let k = 0;
        for (let i = 0; i < size; i++)
          for (let j = Math.max(0, i - band); j <= i; j++) {
            const value = i === j ? 5 : (u[k++] ?? 0);
            addBanded(matrix, j, i, value);
            whole[i * size + j] = value;
            whole[j * size + i] = value;
          }
        const b = Float64Array.from(u.slice(-size));
        const factor = factorBanded(matrix);
        const x = solveSymmetric(whole, b, size);
        if (!factor || !x) throw new Error('should be positive definite');
        solveBanded(factor, b).forEach((value, i) => {
          expect(value).toBeCloseTo(x[i] ?? Number.NaN, 9);
        });
        const inverse = invertBanded(factor);
        for (let i = 0; i < size; i++) {
          const unit = new Float64Array(size);
          unit[i] = 1;
          const column = solveSymmetric(whole, unit, size);
          for (let j = Math.max(0, i - band); j <= i; j++)
            expect(inverse.values[i * (band + 1) + j - i + band]).toBeCloseTo(column?.[j] ?? Number.NaN, 9);
        }
      },
    ),
    { numRuns: 30 },
  );
  const negative = bandedMatrix(2, 1);
  addBanded(negative, 0, 0, -1);
  expect(factorBanded(negative)).toBeNull();
});
