import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Sighting } from '#core/follow/blend-sightings';
import { expectedErrorShare, expectedSquare } from '#core/follow/expected-error';
import { sureEnough } from '#core/follow/follow-confidence';
import { type PointEvidence, pointConfidence } from '#core/follow/point-confidence';

const seen = (x: number, variance = 0.25): Sighting => ({ at: { x, y: 0 }, variance, residual: 0.3 });
/** A toe of a body of 500 px, a third of a second between its marks, held well: all of this is usual. */
const held = (more: Partial<PointEvidence> = {}): PointEvidence => ({
  landmark: 'toe',
  forward: seen(10),
  backward: seen(11),
  blended: { x: 10, y: 0 },
  settled: seen(10),
  secondsBetweenMarks: 0.35,
  bodyLength: 500,
  ...more,
});

it('is sure of a point that both ways and all pictures together put in one place', () => {
  expect(pointConfidence(held())).toBeGreaterThan(sureEnough);
  // by hand: 23.812 + 0.227 ln 0.002 + 1.552 ln 0.0005 + 2.644 ln 0.001 + 2.133 ln 0.35 = -9.90
  expect(Math.log(1 / pointConfidence(held()) - 1)).toBeCloseTo(-9.9, 1);
});

it('is less sure the farther the ways are apart, the more was moved, the weaker the pictures hold, the longer there is no mark', () => {
  const usual = pointConfidence(held());
  for (const doubt of [
    { backward: seen(60) },
    { settled: seen(20) },
    { settled: seen(10, 4) },
    { secondsBetweenMarks: 1 },
    { landmark: 'wrist' as const },
  ])
    expect(pointConfidence(held(doubt))).toBeLessThan(usual);
  expect(pointConfidence(held({ settled: seen(30, 9) }))).toBeLessThan(sureEnough);
});

it('says the same of a body twice as large, and nothing changes with the direction of time', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 0.01, max: 9, noNaN: true }),
      (x, v) => {
        const one = held({ forward: seen(0), backward: seen(x), settled: seen(x / 2, v) });
        const larger = held({
          ...{ forward: seen(0), backward: seen(2 * x), blended: { x: 20, y: 0 } },
          ...{ settled: seen(x, 4 * v), bodyLength: 1000 },
        });
        expect(pointConfidence(larger)).toBeCloseTo(pointConfidence(one), 9);
        const back = { ...one, forward: one.backward, backward: one.forward };
        expect(pointConfidence(back)).toBe(pointConfidence(one));
      },
    ),
  );
});

it('expects a point to err by less than its confidence warns, and lost points by no more than a twentieth', () => {
  expect(expectedErrorShare(1)).toBe(0);
  expect(expectedErrorShare(0)).toBe(0.05);
  // at 0.8 the standard deviation is 2 % / √(2 ln 5) = 1.115 %; three quarters of it, held by 5 %
  expect(expectedErrorShare(0.8)).toBeCloseTo(0.00825, 4);
  expect(expectedSquare(0)).toBeCloseTo(6.25, 9);
  const sizes = [0.999, 0.95, 0.6, 0.2, 0.01].map(expectedErrorShare);
  expect([...sizes].sort((a, b) => a - b)).toEqual(sizes);
});
