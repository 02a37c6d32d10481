import { describe, expect, it } from 'vitest';
import { assumedMarkingError } from '#core/uncertainty/assumed-marking-error';
import {
  leastRealChange,
  markingErrorFromRemarkings,
  type Remarking,
  repeatability,
} from '#core/uncertainty/remarking';
import { normal, seeded } from '../../../sample-clips/model/seeded';

const pairsOf = (first: readonly number[], second: readonly number[]) =>
  first.map((each, i) => ({ first: each, second: second[i] ?? Number.NaN }));

describe('repeatability', () => {
  it('finds the typical error 2.8896 of five pairs', () => {
    // computed from TE = SD(differences)/√2 (Hopkins 2000, Sports Med 30:1–15)
    const found = repeatability(pairsOf([62, 78, 81, 55, 66], [67, 76, 87, 55, 63]));
    expect(found?.typicalError).toBeCloseTo(2.8896, 4);
    expect(found?.bias).toBeCloseTo(1.2, 12);
    expect(found?.tooFew).toBe(true);
  });

  it('turns an SEM of 21.7 into a least real change of 60.149', () => {
    // computed from MDC95 = 1.96·√2·SEM (Weir 2005, J Strength Cond Res 19:231–240)
    expect(leastRealChange(21.7)).toBeCloseTo(60.149, 3);
  });

  it('does not mind a lean common to all second marks, nor which pass came first', () => {
    const first = [1, 2, 4, 3, 7];
    const second = [1.5, 2.2, 4.1, 3.9, 7];
    const plain = repeatability(pairsOf(first, second));
    const leaning = repeatability(
      pairsOf(
        first,
        second.map((each) => each + 5),
      ),
    );
    const swapped = repeatability(pairsOf(second, first));
    expect(leaning?.typicalError).toBeCloseTo(plain?.typicalError ?? Number.NaN, 12);
    expect(swapped?.typicalError).toBeCloseTo(plain?.typicalError ?? Number.NaN, 12);
    expect(swapped?.bias).toBeCloseTo(-(plain?.bias ?? Number.NaN), 12);
  });

  it('says nothing of one pair or of numbers that are none', () => {
    expect(repeatability([{ first: 1, second: 2 }])).toBeNull();
    expect(repeatability(pairsOf([1, 2, Number.NaN], [1, 2, 3]))).toBeNull();
  });
});

describe('marking error from re-marking', () => {
  const fallback = assumedMarkingError(1080);
  const rounded = (count: number, sd: number, interval: number, seed: number): Remarking[] => {
    const random = seeded(seed);
    return Array.from({ length: count }, () => {
      const truth = random();
      const mark = (): number => Math.round((truth + sd * normal(random)) / interval) * interval;
      return { of: 'event', kind: 'entry', first: mark(), second: mark(), frameInterval: interval };
    });
  };

  it('finds the error that marks were drawn with, frame rounding taken off', () => {
    const found = markingErrorFromRemarkings(rounded(4000, 0.018, 0.02, 3), fallback);
    expect(found.basis).toBe('measured');
    // 4,000 pairs: standard error of an SD is 1.1 %; four of them
    expect(found.eventSd.entry).toBeGreaterThan(0.018 * 0.955);
    expect(found.eventSd.entry).toBeLessThan(0.018 * 1.045);
    expect(found.eventSd.exit).toBe(fallback.eventSd.exit);
  });

  it('keeps what was assumed below ten pairs', () => {
    const found = markingErrorFromRemarkings(rounded(9, 0.018, 0.02, 3), fallback);
    expect(found).toEqual(fallback);
  });

  it('never believes in a perfect eye', () => {
    const same: Remarking[] = rounded(12, 0, 0.02, 3);
    const found = markingErrorFromRemarkings(same, fallback);
    expect(found.eventSd.entry).toBeCloseTo(0.004, 12);
    const points = Array.from(
      { length: 12 },
      (): Remarking => ({ of: 'landmark', landmark: 'toe', first: 5, second: 5 }),
    );
    expect(markingErrorFromRemarkings(points, fallback).landmarkSd.toe).toBe(0.1);
  });
});
