import { describe, expect, it } from 'vitest';
import type { ComputedReading } from '#core/measures/reading';
import { earnedDigits, formatReading, readingLine } from '#core/measures/format-reading';
import { reasonWords } from '#core/measures/reason-words';
import { targetMark } from '#core/measures/target-mark';

const reading = (
  value: number,
  low: number,
  high: number,
  unit: ComputedReading['unit'],
  id = 'kick-frequency',
): ComputedReading => ({
  status: 'computed',
  id,
  value,
  unit,
  interval: { low, high, question: 'this-swim' },
  otherInterval: null,
  sharedVariance: 0,
  ownVariance: 1,
  cycles: 3,
  followed: 0,
  perCycle: [],
  singles: null,
  from: { eventIds: [], postureFrames: [], sceneItems: [] },
  notes: [],
  doubts: [],
});

const swimmer = {
  id: 's',
  name: 'Pip',
  birthYear: null,
  bodyTable: null,
  streamlineMetres: null,
  consent: null,
  targets: [{ reading: 'kick-frequency', low: 1.8, high: 2.2, from: null }],
  invented: true,
};

describe('how a reading is printed', () => {
  it('shows no more digits than its interval earns', () => {
    expect(earnedDigits(0.034, 3)).toBe(2);
    expect(earnedDigits(0.0134, 1)).toBe(3);
    expect(earnedDigits(12, 3)).toBe(0);
    expect(earnedDigits(0, 2)).toBe(2);
  });

  it('prints value, spread and unit, with true minus and plus signs for gaps', () => {
    expect(formatReading(reading(1.8234, 1.79, 1.856, 'Hz'), 2)).toEqual({
      value: '1.82',
      spread: '± 0.03',
      unit: 'Hz',
      doubtful: false,
      doubt: '',
    });
    expect(formatReading(reading(86, 74, 98, 'ms', 'kick2-bottom-to-exit'), 0).value).toBe('+86');
    expect(formatReading(reading(-9.14, -10.5, -7.7, '%'), 1).value).toBe('−9.1');
  });

  it('prints both ends of a lopsided interval', () => {
    expect(formatReading(reading(2, 1, 5, 'ratio'), 1).spread).toBe('1.0 to 5.0');
    expect(readingLine(formatReading(reading(2, 1, 5, 'm/s'), 1))).toBe('2.0 (1.0 to 5.0) m/s');
    expect(readingLine(formatReading(reading(2, 1, 3, 'm/s'), 1))).toBe('2.0 ± 1.0 m/s');
  });

  it('never prints a minus before nothing', () => {
    expect(formatReading(reading(-0.2, -10, 10, 'ms'), 0).value).toBe('0');
  });
});

describe('the target dot', () => {
  it('says met, missed, or that the marks cannot tell', () => {
    const mark = (value: number, half: number) =>
      targetMark(swimmer, 'kick-frequency', value, { low: value - half, high: value + half })?.met;
    expect(mark(2, 0.1)).toBe('yes');
    expect(mark(1.5, 0.1)).toBe('no');
    expect(mark(1.8, 0.1)).toBe('unsure');
  });

  it('is absent without a target', () => {
    expect(targetMark(swimmer, 'strouhal', 1)).toBeNull();
    expect(targetMark(null, 'kick-frequency', 1)).toBeNull();
  });
});

describe('what is missing', () => {
  it('is said with how many there are and how many it takes', () => {
    expect(reasonWords({ code: 'needs-events', kind: 'kick-top', have: 1, need: 2 })).toBe(
      'Needs 2 kick top marks, has 1',
    );
    expect(reasonWords({ code: 'needs-scene', item: 'scale' })).toBe('Needs a known length');
  });
});
