import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockWords, secondsOf } from '#core/practice/clock-words';

describe('time as written on deck', () => {
  it('is read as coaches write it', () => {
    expect(['1:05', '65', '18.4', '18,4', '0:20', ' 2:00 '].map(secondsOf)).toEqual([
      65, 65, 18.4, 18.4, 20, 120,
    ]);
    expect(['', '0', '1:75', 'fast', '-3', '1:2:3'].map(secondsOf)).toEqual([
      null,
      null,
      null,
      null,
      null,
      null,
    ]);
  });

  it('comes back as it was written, to the tenth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 215_999 }), (tenths) => {
        expect(secondsOf(clockWords(tenths / 10))).toBe(tenths / 10);
      }),
    );
  });
});
