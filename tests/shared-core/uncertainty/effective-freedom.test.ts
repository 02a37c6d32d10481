import { describe, expect, it } from 'vitest';
import { effectiveFreedom } from '#core/uncertainty/effective-freedom';
import { studentQuantile975, studentWidening } from '#core/uncertainty/student-quantile';

describe('degrees of freedom of a variance made of several', () => {
  it('are those of the one part where there is one, and add up where parts are alike', () => {
    expect(effectiveFreedom([{ variance: 4, freedom: 9 }])).toBeCloseTo(9, 12);
    const alike = [1, 1, 1].map(() => ({ variance: 2, freedom: 9 }));
    expect(effectiveFreedom(alike)).toBeCloseTo(27, 12);
  });

  it('agree with Welch’s two samples', () => {
    // s² = 4 of 10, s² = 9 of 16: (0.4 + 0.5625)² / (0.4² / 9 + 0.5625² / 15), by hand
    const parts = [
      { variance: 4 / 10, freedom: 9 },
      { variance: 9 / 16, freedom: 15 },
    ];
    expect(effectiveFreedom(parts)).toBeCloseTo(0.92640625 / (0.16 / 9 + 0.31640625 / 15), 9);
  });

  it('grow with what is known beside them, and are without end where nothing was estimated', () => {
    expect(effectiveFreedom([{ variance: 1, freedom: 9 }], 1)).toBeCloseTo(36, 12);
    expect(effectiveFreedom([{ variance: 1, freedom: Infinity }], 3)).toBe(Infinity);
    expect(effectiveFreedom([])).toBe(Infinity);
  });

  it('widen an interval by Student’s t, and not at all without end', () => {
    expect(studentWidening(9.7)).toBeCloseTo(studentQuantile975(9) / 1.959964, 9);
    expect(studentWidening(9)).toBeCloseTo(2.262157 / 1.959964, 5);
    expect(studentWidening(Infinity)).toBe(1);
  });
});
