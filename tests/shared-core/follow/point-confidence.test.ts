import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Sighting } from '#core/follow/blend-sightings';
import { expectedErrorShare, expectedSquare, warnedConfidence } from '#core/follow/expected-error';
import { sureEnough } from '#core/follow/follow-confidence';
import {
  type PointDoubt,
  type PointEvidence,
  pointDoubt,
  runConfidences,
} from '#core/follow/point-confidence';

const seen = (x: number, variance = 0.25): Sighting => ({ at: { x, y: 0 }, variance, residual: 0.3 });
/** A toe of a body of 500 px, a third of a second between its marks, held well: all of this is usual. */
const held = (more: Partial<PointEvidence> = {}): PointEvidence => ({
  landmark: 'toe',
  forward: seen(10),
  backward: seen(11),
  blended: { x: 10, y: 0 },
  settled: seen(10),
  secondsBetweenMarks: 0.35,
  shownShare: 0.9,
  bodyLength: 500,
  ...more,
});
const times = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i / 60);
const alone = (evidence: PointEvidence): number =>
  runConfidences([{ spread: pointDoubt(evidence), strange: evidence.settled.residual }], [0])[0] ?? 0;

it('is sure of a point that both ways and all pictures together put in one place', () => {
  expect(alone(held())).toBeGreaterThan(sureEnough);
  // by hand: −3.02 + 0.176 ln 0.002 + 0.296 ln 0.0005 + 0.786 ln 0.001 + 0.327 ln 0.35 + 0.987 ln 0.9 = −12.24
  expect(pointDoubt(held())).toBeCloseTo(-12.24, 2);
});

it('is less sure the farther the ways are apart, the more was moved, the weaker the pictures hold, the longer there is no mark', () => {
  const usual = alone(held());
  for (const doubt of [
    { backward: seen(60) },
    { settled: seen(20) },
    { settled: seen(10, 4) },
    { secondsBetweenMarks: 1 },
    { shownShare: 1 },
    { landmark: 'wrist' as const },
  ])
    expect(alone(held(doubt))).toBeLessThan(usual);
  expect(alone(held({ settled: { ...seen(30, 9), residual: 0.7 } }))).toBeLessThan(sureEnough);
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
        expect(pointDoubt(larger)).toBeCloseTo(pointDoubt(one), 9);
        const back = { ...one, forward: one.backward, backward: one.forward };
        expect(pointDoubt(back)).toBe(pointDoubt(one));
      },
    ),
  );
});

it('doubts a point among doubtful ones, and leaves a doubtful one among sure ones alone', () => {
  const [sure, unsure] = [0.003, 0.02].map((sd) => ({ spread: 2 * Math.log(sd), strange: 0.3 })) as [
    PointDoubt,
    PointDoubt,
  ];
  const amid = runConfidences([unsure, unsure, unsure, sure, unsure, unsure, unsure], times(7));
  expect(amid[3]).toBeLessThan(sureEnough);
  const one = runConfidences([sure, sure, sure, unsure, sure, sure, sure], times(7));
  // by hand: 10.69 + 1.711 · 2 ln 0.02 + 5.501 · 0.3 = −1.047, odds of 0.351 to 1 that it is lost
  expect(one[3]).toBeCloseTo(1 / 1.351, 3);
  // a tenth of a second away nothing of it is left
  const far = runConfidences([unsure, ...Array.from({ length: 6 }, () => sure)], times(7));
  expect(far[6]).toBeCloseTo(warnedConfidence(0.003), 9);
});

it('stays sure of points on noisy film whose limbs look like themselves, and doubts those whose limbs do not', () => {
  // ways apart, moved and weakly held as in murky water
  const noisy = held({ backward: seen(40), settled: seen(16, 1.5) });
  expect(alone(noisy)).toBeGreaterThanOrEqual(sureEnough);
  const strange = { ...noisy, settled: { ...noisy.settled, residual: 0.9 } };
  expect(alone(strange)).toBeLessThan(sureEnough);
});

it('expects a point to err by less than its confidence warns, and lost points by no more than a twentieth', () => {
  expect(expectedErrorShare(1)).toBe(0);
  expect(expectedErrorShare(0)).toBe(0.05);
  // at 0.8 the standard deviation is 2 % / √(2 ln 5) = 1.115 %, warned 1.5 times over: 0.743 %, held by 5 %
  expect(expectedErrorShare(0.8)).toBeCloseTo(0.00735, 5);
  for (const sd of [0.002, 0.005, 0.01]) {
    // held by 5 %: sd / √(1 + (sd/0.05)²)
    expect(expectedErrorShare(warnedConfidence(sd))).toBeCloseTo(sd / Math.sqrt(1 + (sd / 0.05) ** 2), 6);
  }
  expect(expectedSquare(0)).toBeCloseTo(6.25, 9);
  const sizes = [0.999, 0.95, 0.6, 0.2, 0.01].map(expectedErrorShare);
  expect([...sizes].sort((a, b) => a - b)).toEqual(sizes);
});
