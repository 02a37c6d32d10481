import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstDrillBook, parseDrillBook, serialiseDrillBook } from '#core/practice/drill-file';
import { parsePractice, practiceFormat, serialisePractice } from '#core/practice/practice-file';
import { type PracticeItem, practiceItemSchema } from '#core/practice/practice-schema';
import { aPractice, anEntry, anItem } from './a-practice';

const full = () =>
  aPractice({
    items: [
      anItem({
        drillId: 'one-arm-two-two-four',
        pattern: { runs: [{ arm: 'both', count: 4 }], perMetres: 25 },
        kickBetween: { metres: 25, aids: ['fins'], arms: 'stretched', sideUp: 'back' },
        ladder: { of: 'lengths', rungs: [1, 2, 3], stepMetres: 25 },
      }),
      anItem({ id: 'item-2', pause: { kind: 'rest', seconds: 20 }, targetCount: 8, effort: 'full' }),
    ],
    log: [anEntry(), anEntry({ id: 'log-2', repeat: 1, note: 'Ünïcode “quotes”', swimId: 'swim-1' })],
  });

const faultOf = (change: Record<string, unknown>) => {
  const parsed = parsePractice(JSON.stringify({ ...aPractice(), ...change }));
  return parsed.ok ? null : parsed.fault;
};
const itemFault = (change: Partial<PracticeItem>) => faultOf({ items: [anItem(change)] });

describe('a practice file', () => {
  it('gives back the practice it was written from, and the same text again', () => {
    const text = serialisePractice(full());
    const parsed = parsePractice(text);
    expect(parsed).toEqual({ ok: true, value: full() });
    expect(parsed.ok && serialisePractice(parsed.value)).toBe(text);
  });

  it('of the first version opens with the assumed pace and all else unchanged', () => {
    const old = readFileSync(new URL('./frozen/practice-v1.json', import.meta.url), 'utf8');
    const parsed = parsePractice(old);
    expect(parsed.ok && parsed.value.pace).toBeNull();
    expect(parsed.ok && { ...parsed.value, pace: undefined }).toEqual({
      ...JSON.parse(old),
      version: 2,
      pace: undefined,
    });
  });

  it('of the second version opens unchanged', () => {
    const text = readFileSync(new URL('./frozen/practice-v2.json', import.meta.url), 'utf8');
    const parsed = parsePractice(text);
    expect(parsed.ok && serialisePractice(parsed.value)).toBe(text);
    expect(parsed.ok && parsed.value.pace).toEqual({ swim: 95, kick: 130 });
  });

  it('changes by one line when one count is logged', () => {
    const before = serialisePractice(full()).split('\n');
    const practice = full();
    const log = practice.log.map((each) => (each.id === 'log-1' ? { ...each, count: 9 } : each));
    const after = serialisePractice({ ...practice, log }).split('\n');
    expect(after.filter((line, i) => line !== before[i])).toHaveLength(1);
  });

  it('says which fault a text has', () => {
    expect(parsePractice('{')).toEqual({ ok: false, fault: { code: 'not-json' } });
    expect(faultOf({ format: 'submark-swim' })).toEqual({
      code: 'other-format',
      expected: 'submark-practice',
    });
    expect(faultOf({ version: 3 })).toEqual({ code: 'newer-version', needs: 3, known: 2 });
    expect(faultOf({ date: '2026-02-30' })).toMatchObject({ code: 'damaged', where: 'date' });
    expect(faultOf({ items: [anItem(), anItem()] })).toMatchObject({ code: 'damaged', where: 'items' });
    expect(itemFault({ distanceMetres: Number.NaN })).toMatchObject({ code: 'damaged' });
    expect(itemFault({ repeats: 0 })).toMatchObject({ where: 'items.0.repeats' });
    expect(itemFault({ aids: ['fins', 'fins'] })).toMatchObject({ where: 'items.0.aids' });
  });

  it('refuses a ladder of growing distance under water, and lets the same ladder pass above', () => {
    const ladder = { of: 'lengths', rungs: [1, 2], stepMetres: 25 } as const;
    expect(itemFault({ underwater: true, ladder: { ...ladder, rungs: [1, 2] } })).toMatchObject({
      where: 'items.0.ladder',
    });
    expect(itemFault({ underwater: false, ladder: { ...ladder, rungs: [1, 2] } })).toBeNull();
  });

  it('refuses a ladder of counts without a count, or below one stroke', () => {
    expect(itemFault({ ladder: { of: 'count', rungs: [0, 2] } })).toMatchObject({
      where: 'items.0.targetCount',
    });
    expect(itemFault({ targetCount: 8, ladder: { of: 'count', rungs: [-8] } })).toMatchObject({
      where: 'items.0.ladder',
    });
  });

  it('holds no field for time without breath or distance under water', () => {
    expect(Object.keys(practiceItemSchema.shape).filter((key) => /breath|under/i.test(key))).toEqual([
      'underwater',
      'breathingEvery',
    ]);
  });

  it('never throws on any JSON', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(parsePractice(text).ok).toBe(false);
      }),
    );
  });

  it('needs no migration yet, and would need one for each older version', () => {
    expect(Object.keys(practiceFormat.migrations)).toHaveLength(practiceFormat.version - 1);
  });
});

describe('a file of drills', () => {
  it('goes out and comes back', () => {
    expect(parseDrillBook(serialiseDrillBook(firstDrillBook))).toEqual({ ok: true, value: firstDrillBook });
  });

  it('of the first released version opens unchanged', () => {
    const text = readFileSync(new URL('./frozen/drills-v1.json', import.meta.url), 'utf8');
    const parsed = parseDrillBook(text);
    expect(parsed.ok && serialiseDrillBook(parsed.value)).toBe(text);
  });

  it('starts with the usual patterns, for the coach to change', () => {
    expect(firstDrillBook.patterns.map(({ id }) => id)).toEqual(['grown-men', 'grown-women', 'juniors']);
  });
});
