import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternArms } from '#core/practice/practice-schema';
import {
  parsePattern,
  patternCount,
  patternFaultWords,
  patternPasses,
  patternPhrase,
  patternStrokes,
} from '#core/practice/stroke-pattern';
import { patternAgainstTarget, patternIsEven, usualPatterns } from '#core/practice/usual-pattern';

const usual = (id: string) => {
  const found = usualPatterns.find((each) => each.id === id);
  if (!found) throw new Error(`no usual pattern ${id}`);
  return found;
};
const targets = (low: number | null, high: number | null) => ({
  targets: [{ reading: 'stroke-count', low, high, from: null }],
});

describe('words of a stroke pattern', () => {
  it.each([
    '2 right 2 left 4 both',
    'two right, two left, four both',
    '2R 2L 4B',
    '2r-2l-4b',
    '2+2+4',
    '2 strokes right and 2 left then 4 both',
  ])('reads %s', (text) => {
    const parsed = parsePattern(text);
    expect(parsed).toEqual({ ok: true, runs: usual('grown-men').pattern.runs });
  });

  it('says what it could not read', () => {
    const fault = (text: string) => {
      const parsed = parsePattern(text);
      return parsed.ok ? null : parsed.fault;
    };
    expect(fault(' , ')).toEqual({ code: 'empty' });
    expect(fault('2 right 2 up')).toEqual({ code: 'unreadable', word: 'up', at: 10 });
    expect(fault('2 right 3')).toEqual({ code: 'number-without-arm', number: 3 });
    expect(fault('2 3 right')).toEqual({ code: 'number-without-arm', number: 2 });
    expect(fault('2+2')).toEqual({ code: 'number-without-arm', number: 2 });
    expect(fault('right 2')).toEqual({ code: 'arm-without-number', arm: 'right' });
    expect(fault('0 right')).toEqual({ code: 'count-out-of-range', number: 0 });
    expect(fault('1 left '.repeat(13))).toEqual({ code: 'too-many-runs' });
    expect(fault('1 constructor')).toMatchObject({ code: 'unreadable' });
  });

  it('comes back from its own phrase', () => {
    const run = fc.record({ arm: fc.constantFrom(...patternArms), count: fc.integer({ min: 1, max: 50 }) });
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 12 }), (runs) => {
        expect(parsePattern(patternPhrase(runs))).toEqual({ ok: true, runs });
      }),
    );
  });

  it('never throws, and has words for every fault', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const parsed = parsePattern(text);
        if (!parsed.ok) expect(patternFaultWords(parsed.fault).length).toBeGreaterThan(10);
      }),
    );
  });
});

describe('strokes of a pattern', () => {
  // by hand, as handed down: two, two, four is 8 a 25 and 16 a 50; three, three, three one and two more
  it('gives 8 a 25 and 16 a 50 to grown men, 9 and 18 to grown women', () => {
    const { pattern: men } = usual('grown-men');
    const { pattern: women } = usual('grown-women');
    expect([25, 50].map((metres) => patternCount(men, metres))).toEqual([8, 16]);
    expect([25, 50].map((metres) => patternCount(women, metres))).toEqual([9, 18]);
  });

  it('gives juniors more than either', () => {
    const juniors = patternCount(usual('juniors').pattern, 25) ?? 0;
    expect(juniors).toBeGreaterThan(9);
  });

  it('says of every usual pattern where it comes from', () => {
    for (const { source } of usualPatterns) expect(source).toContain('common practice, no source');
  });

  it('implies no count where it does not come out whole, or runs on to the wall', () => {
    const { pattern } = usual('grown-men');
    expect(patternCount(pattern, 60)).toBeNull();
    expect(patternCount(pattern, 10)).toBeNull();
    expect(patternCount(pattern, 0)).toBeNull();
    expect(patternCount(pattern, Number.NaN)).toBeNull();
    expect(patternCount({ ...pattern, perMetres: null }, 25)).toBeNull();
  });

  it('grows in step with the distance', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80 }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        (n, perMetres) => {
          const pattern = { ...usual('grown-women').pattern, perMetres };
          expect(patternPasses(pattern, n * perMetres)).toBe(n);
          expect(patternCount(pattern, n * perMetres)).toBe(n * patternStrokes(pattern.runs).all);
        },
      ),
    );
  });

  it('is held against the swimmer’s own target for a length', () => {
    const { pattern } = usual('grown-men');
    expect(patternAgainstTarget(pattern, 25, targets(8, 9))).toEqual({
      verdict: 'meets-target',
      perLength: 8,
    });
    expect(patternAgainstTarget(pattern, 25, targets(9, 10))).toEqual({
      verdict: 'below-target',
      perLength: 8,
    });
    expect(patternAgainstTarget(pattern, 25, targets(null, 7))).toEqual({
      verdict: 'above-target',
      perLength: 8,
    });
    expect(patternAgainstTarget(pattern, 50, targets(16, 16))).toEqual({
      verdict: 'meets-target',
      perLength: 16,
    });
    expect(patternAgainstTarget(pattern, 25, { targets: [] })).toEqual({ verdict: 'no-target' });
    expect(patternAgainstTarget(pattern, 33, targets(8, 9))).toEqual({ verdict: 'no-count' });
  });

  it('knows whether right and left are even', () => {
    expect(patternIsEven(usual('grown-men').pattern, 25)).toBe(true);
    expect(patternIsEven({ runs: [{ arm: 'left', count: 1 }], perMetres: null }, 25)).toBe(false);
    expect(patternIsEven(usual('grown-men').pattern, 30)).toBeNull();
  });
});
