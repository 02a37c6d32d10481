import fc from 'fast-check';
import { inverse, Matrix } from 'ml-matrix';
import { expect, it } from 'vitest';
import { invertPositive } from '#core/signal/invert-positive';

it('inverts a matrix that can be checked by hand', () => {
  // [[4, 2], [2, 3]] has determinant 8, so its inverse is [[3, −2], [−2, 4]] / 8; the upper half is not read
  const found = invertPositive(Float64Array.from([4, Number.NaN, 2, 3]), 2);
  [0.375, -0.25, -0.25, 0.5].forEach((each, i) => {
    expect(found?.[i]).toBeCloseTo(each, 14);
  });
});

it('agrees with a matrix library on random positive definite matrices', () => {
  const entries = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 25, maxLength: 25 });
  fc.assert(
    fc.property(entries, (values) => {
      const root = Matrix.from1DArray(5, 5, values);
      const matrix = root.mmul(root.transpose()).add(Matrix.eye(5));
      const expected = inverse(matrix).to1DArray();
      const found = invertPositive(Float64Array.from(matrix.to1DArray()), 5);
      expected.forEach((each, i) => {
        expect(found?.[i]).toBeCloseTo(each, 9);
      });
    }),
    { numRuns: 50 },
  );
});

it('refuses what is not positive definite, and what holds no number', () => {
  expect(invertPositive(Float64Array.from([1, 0, 2, 1]), 2)).toBeNull();
  expect(invertPositive(Float64Array.from([0]), 1)).toBeNull();
  expect(invertPositive(Float64Array.from([Number.NaN]), 1)).toBeNull();
});
