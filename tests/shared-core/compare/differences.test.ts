import { describe, expect, it } from 'vitest';
import { conditionContrast } from '#core/compare/condition-contrast';
import { readingDifference } from '#core/compare/difference';
import type { ComputedReading } from '#core/measures/reading';
import { normal, seeded } from '../../../sample-clips/model/seeded';

const reading = (value: number, own: number, shared = 0): ComputedReading => ({
  status: 'computed',
  id: 'kick-amplitude-toe',
  value,
  unit: 'm',
  interval: { low: value - 1, high: value + 1, question: 'this-swim' },
  otherInterval: null,
  sharedVariance: shared,
  ownVariance: own,
  cycles: 6,
  followed: 0,
  perCycle: [],
  singles: null,
  from: { eventIds: [], postureFrames: [], sceneItems: [] },
  notes: [],
  doubts: [],
});

describe('difference of two swims', () => {
  it('is clear when zero lies outside the interval, else within error', () => {
    // by hand: 1.96·√(0.01² + 0.01²) = 0.0277
    expect(readingDifference(reading(0.4, 1e-4), reading(0.43, 1e-4), true)?.verdict).toBe('clear');
    expect(readingDifference(reading(0.4, 1e-4), reading(0.42, 1e-4), true)?.verdict).toBe('within-error');
  });

  it('leaves the scale out where both swims share it, and only there', () => {
    const first = reading(0.4, 1e-6, 4e-4);
    const second = reading(0.42, 1e-6, 4e-4);
    expect(readingDifference(first, second, true)?.verdict).toBe('clear');
    expect(readingDifference(first, second, false)?.verdict).toBe('within-error');
  });

  it('goes the short way round between directions, and says a length as it is', () => {
    const direction = (value: number): ComputedReading => ({ ...reading(value, 1), unit: '°' });
    const found = readingDifference(direction(170), direction(-170), true);
    expect(found?.value).toBeCloseTo(20, 12);
    expect(found && found.high - found.value).toBeCloseTo(1.96 * Math.SQRT2, 2);
    expect(readingDifference(direction(-170), direction(170), true)?.value).toBeCloseTo(-20, 12);
    expect(readingDifference(reading(-170, 1), reading(170, 1), true)?.value).toBe(340);
  });

  it('turns its sign with the order', () => {
    const a = readingDifference(reading(0.4, 1e-4), reading(0.5, 2e-4), true);
    const b = readingDifference(reading(0.5, 2e-4), reading(0.4, 1e-4), true);
    expect(a?.value).toBeCloseTo(-(b?.value ?? Number.NaN), 12);
    expect(a?.low).toBeCloseTo(-(b?.high ?? Number.NaN), 12);
  });

  it('compares no metres with pixels', () => {
    expect(readingDifference(reading(1, 1), { ...reading(1, 1), unit: 'px' }, true)).toBeNull();
  });
});

describe('contrast of two conditions', () => {
  it('gives the equal-variance interval when counts and spreads are equal', () => {
    // by hand: means 2 and 5, variances 1, n 3: df 4, t 2.776445 (exact tables), half 2.776445·√(2/3)
    const found = conditionContrast([1, 2, 3], [4, 5, 6]);
    expect(found?.degreesOfFreedom).toBeCloseTo(4, 12);
    expect((found?.high ?? 0) - (found?.difference ?? 0)).toBeCloseTo(2.776445 * Math.sqrt(2 / 3), 5);
    expect(found?.verdict).toBe('clear');
    // by hand: n 3 gives a half-width of 2.267 < 3; n 2 (t 4.302653, half 4.303) does not
    expect(found?.repeatsNeeded).toBe(3);
  });

  it('asks for more repeats the smaller the difference, and for none that can not be had', () => {
    const few = conditionContrast([1, 2, 3], [3, 4, 5])?.repeatsNeeded ?? 0;
    const more = conditionContrast([1, 2, 3], [2, 3, 4])?.repeatsNeeded ?? 0;
    expect(more).toBeGreaterThan(few);
    expect(conditionContrast([1, 2, 3], [1, 2, 3])?.repeatsNeeded).toBeNull();
  });

  it('holds the true difference about 95 times in 100', () => {
    const random = seeded(11);
    let held = 0;
    const draws = 2000;
    for (let i = 0; i < draws; i++) {
      const first = Array.from({ length: 4 }, () => normal(random));
      const second = Array.from({ length: 7 }, () => 1 + 2 * normal(random));
      const found = conditionContrast(first, second);
      if (found && found.low <= 1 && 1 <= found.high) held += 1;
    }
    // three standard errors of 95 % in 2,000 draws are 1.5 %; Welch's own approximation adds a little
    expect(held / draws).toBeGreaterThan(0.93);
    expect(held / draws).toBeLessThan(0.97);
  });

  it('says nothing of one repeat, or where nothing varies', () => {
    expect(conditionContrast([1], [2, 3])).toBeNull();
    expect(conditionContrast([1, 1], [2, 2])).toBeNull();
  });
});
