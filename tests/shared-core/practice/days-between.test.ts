import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysBetween } from '#core/practice/days-between';

describe('days between', () => {
  it('counts whole days over months and leap years', () => {
    expect(daysBetween('2026-05-01', '2026-06-01')).toBe(31);
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2026-05-02', '2026-05-01')).toBe(-1);
  });

  it('is null of what is no day', () => {
    for (const day of ['2026-02-30', '2026-13-01', '', 'yesterday', '2026-5-1'])
      expect(daysBetween(day, '2026-05-01')).toBeNull();
  });

  it('adds up', () => {
    const day = fc
      .date({ min: new Date('1950-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10));
    fc.assert(
      fc.property(day, day, day, (a, b, c) => {
        expect((daysBetween(a, b) ?? NaN) + (daysBetween(b, c) ?? NaN)).toBe(daysBetween(a, c));
      }),
    );
  });
});
