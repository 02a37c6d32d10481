import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PracticeItem } from '#core/practice/practice-schema';
import { practiceTime } from '#core/practice/practice-time';
import { periodTotals, practiceTotals, totalsOf } from '#core/practice/practice-totals';
import { danglingEntries, swumParts } from '#core/practice/swum-part';
import { unfoldItem } from '#core/practice/unfold-item';
import { usualLadders } from '#core/practice/usual-ladder';
import { usualPatterns } from '#core/practice/usual-pattern';
import { aPractice, anEntry, anItem } from './a-practice';

const ladder = (id: string) => usualLadders.find((each) => each.id === id)?.ladder ?? null;
const men = usualPatterns[0]?.pattern ?? null;
const planned = (...items: PracticeItem[]) =>
  practiceTotals(
    aPractice({ items: items.map((item, i) => ({ ...item, id: `item-${i + 1}` })) }),
    null,
    'planned',
  );

describe('an item unfolds', () => {
  const distances = (item: PracticeItem) => unfoldItem(item).map((each) => each.distanceMetres);
  const counts = (item: PracticeItem) => unfoldItem(item).map((each) => each.count);

  it('1-2-3 up by 25 and 3-2-1 down, as often as it is swum', () => {
    expect(distances(anItem({ repeats: 2, ladder: ladder('up-by-25') }))).toEqual([25, 50, 75, 25, 50, 75]);
    expect(distances(anItem({ repeats: 1, ladder: ladder('down-by-25') }))).toEqual([75, 50, 25]);
  });

  it('a count plus two, then plus four', () => {
    const item = anItem({ repeats: 1, targetCount: 8, ladder: ladder('count-plus-two-plus-four') });
    expect(counts(item)).toEqual([8, 10, 12]);
  });

  it('1-2-3 strokes right, left, both: 3, 6 and 9 strokes a 25', () => {
    expect(counts(anItem({ repeats: 1, targetCount: 8, ladder: ladder('pattern-up') }))).toEqual([3, 6, 9]);
    expect(counts(anItem({ repeats: 1, ladder: ladder('pattern-down') }))).toEqual([9, 6, 3]);
  });

  it('a pattern gives the count of each rung of a ladder of lengths', () => {
    expect(counts(anItem({ repeats: 1, pattern: men, ladder: ladder('up-by-25') }))).toEqual([8, 16, 24]);
  });

  it('into repeats numbered from 0 with kick between them, none after the last', () => {
    const kickBetween = { metres: 25, aids: [], arms: 'stretched', sideUp: 'front' } as const;
    const all = unfoldItem(anItem({ repeats: 3, kickBetween: { ...kickBetween, aids: [] } }));
    expect(all.map(({ repeat, kickMetresAfter }) => [repeat, kickMetresAfter])).toEqual([
      [0, 25],
      [1, 25],
      [2, 0],
    ]);
  });
});

describe('totals', () => {
  it('add up by hand: six 25s and five kick 25s with fins between', () => {
    const totals = planned(
      anItem({ kickBetween: { metres: 25, aids: ['fins'], arms: 'stretched', sideUp: 'back' } }),
    );
    expect(totals.metres).toBe(6 * 25 + 5 * 25);
    expect(totals.kickMetresBetween).toBe(125);
    expect([totals.aidedMetres, totals.unaidedMetres]).toEqual([125, 150]);
    expect(totals.metresByAid.get('fins')).toBe(125);
    expect(totals.metresBySide.get('back')).toBe(125);
  });

  it('match when as much is swum without aids as with, work by work', () => {
    const kick = { stroke: 'dolphin-kick', arms: 'stretched' } as const;
    const uneven = planned(anItem({ ...kick, aids: ['fins'] }), anItem({ ...kick, repeats: 4 }), anItem());
    // over all, 150 with and 250 without; but of this kick only 100 without for 150 with
    expect(uneven.matched).toBe(true);
    expect(uneven.byWork).toHaveLength(1);
    expect(uneven.byWork[0]).toMatchObject({ aidedMetres: 150, unaidedMetres: 100, shortfallMetres: 50 });
    const even = planned(anItem({ ...kick, aids: ['fins'] }), anItem(kick));
    expect(even.byWork[0]).toMatchObject({ shortfallMetres: 0, matched: true });
    expect(planned(anItem({ aids: ['fins'] }))).toMatchObject({ shortfallMetres: 150, matched: false });
  });

  it('count the strokes of each arm', () => {
    // by hand: six 25s of two, two, four: 12 right, 12 left; then three 25s of 9 right
    const even = planned(anItem({ pattern: men, arms: 'one-arm-alternating' }));
    expect(even.arms).toEqual({ right: 12, left: 12, uncountedRepeats: 0, even: true });
    const right = anItem({ arms: 'one-arm-right', repeats: 3, targetCount: 9 });
    expect(planned(anItem({ pattern: men }), right).arms).toMatchObject({ right: 39, left: 12, even: false });
    expect(planned(right, { ...right, arms: 'one-arm-left' }).arms.even).toBe(true);
  });

  it('say when one-arm strokes were not counted, instead of calling them even', () => {
    const totals = planned(anItem({ arms: 'one-arm-left' }));
    expect(totals.arms).toEqual({ right: 0, left: 0, uncountedRepeats: 6, even: null });
  });

  it('of what was logged hold logged repeats only, with their own counts', () => {
    const practice = aPractice({
      items: [anItem({ arms: 'one-arm-left', targetCount: 8 })],
      log: [anEntry({ count: 9 }), anEntry({ id: 'log-2', repeat: 2, count: null })],
    });
    const totals = practiceTotals(practice, 'swimmer-1', 'logged');
    expect(totals.metres).toBe(50);
    expect(totals.arms.left).toBe(9 + 8);
    expect(practiceTotals(practice, 'swimmer-2', 'logged').metres).toBe(0);
  });

  it('count kick between as swum only between two logged repeats', () => {
    const kickBetween = { metres: 50, aids: [], arms: 'stretched' as const, sideUp: 'front' as const };
    const log = [0, 1, 3].map((repeat) => anEntry({ id: `log-${repeat}`, repeat }));
    const practice = aPractice({ items: [anItem({ kickBetween })], log });
    expect(practiceTotals(practice, 'swimmer-1', 'logged').kickMetresBetween).toBe(50);
  });

  it('give each swimmer only their own items', () => {
    const practice = aPractice({
      swimmerIds: ['a', 'b'],
      items: [anItem(), anItem({ id: 'item-2', swimmerIds: ['b'], repeats: 2 })],
    });
    const metres = (who: string | null) => practiceTotals(practice, who, 'planned').metres;
    expect([metres('a'), metres('b'), metres('c'), metres(null)]).toEqual([150, 200, 0, 200]);
  });

  it('do not take an entry that names nobody for somebody', () => {
    const log = [anEntry({ swimmerId: null })];
    const alone = aPractice({ log });
    const two = aPractice({ swimmerIds: ['swimmer-1', 'swimmer-2'], log });
    expect(practiceTotals(alone, 'swimmer-1', 'logged').metres).toBe(25);
    expect(practiceTotals(two, 'swimmer-1', 'logged').metres).toBe(0);
  });

  it('of a period take both its days in', () => {
    const practices = ['2026-04-30', '2026-05-01', '2026-05-07', '2026-05-08'].map((date) =>
      aPractice({ date }),
    );
    const period = { from: '2026-05-01', to: '2026-05-07' };
    expect(periodTotals(practices, period, null, 'planned').metres).toBe(300);
  });

  it('of nothing are nothing, matched and even', () => {
    expect(totalsOf([])).toMatchObject({ metres: 0, matched: true, shortfallMetres: 0, byWork: [] });
    expect(totalsOf([]).arms.even).toBe(true);
  });

  it('are the same whatever the order, and split into with and without', () => {
    const item = fc.record({
      repeats: fc.integer({ min: 1, max: 12 }),
      distanceMetres: fc.constantFrom(25, 50, 22.86),
      aids: fc.constantFrom<PracticeItem['aids']>([], ['fins'], ['fins', 'snorkel']),
      sideUp: fc.constantFrom('front' as const, 'back' as const),
    });
    fc.assert(
      fc.property(fc.array(item, { maxLength: 8 }), (items) => {
        const made = items.map((each, i) => anItem({ ...each, id: `i${i}` }));
        const parts = swumParts(aPractice({ items: made }), null, 'planned');
        const totals = totalsOf(parts);
        const backward = totalsOf([...parts].reverse());
        expect(totals.aidedMetres + totals.unaidedMetres).toBeCloseTo(totals.metres, 6);
        expect(backward.metres).toBeCloseTo(totals.metres, 6);
        expect(backward.matched).toBe(totals.matched);
        expect(totals.shortfallMetres).toBeGreaterThanOrEqual(0);
        // a shortfall over all can be no larger than the shortfalls work by work
        const byWork = totals.byWork.reduce((sum, each) => sum + each.shortfallMetres, 0);
        expect(totals.shortfallMetres).toBeLessThanOrEqual(byWork + 1e-6);
      }),
    );
  });

  it('leave entries of gone items out, and name them', () => {
    const practice = aPractice({
      log: [anEntry(), anEntry({ id: 'log-2', itemId: 'gone' }), anEntry({ id: 'log-3', repeat: 6 })],
    });
    expect(danglingEntries(practice).map(({ id }) => id)).toEqual(['log-2', 'log-3']);
    expect(practiceTotals(practice, 'swimmer-1', 'logged').metres).toBe(25);
  });
});

describe('time of a practice', () => {
  const pace = { swim: 100, kick: 200 };

  it('is the send-offs where there are some', () => {
    expect(practiceTime({ items: [anItem()] }, pace)).toEqual({
      seconds: 360,
      fromPaceSeconds: 0,
      tightItemIds: [],
    });
  });

  it('is pace and rest otherwise: by hand 4 × (25 s + 15 s), and kick 3 × 50 s', () => {
    const kickBetween = { metres: 25, aids: [], arms: 'stretched' as const, sideUp: 'front' as const };
    const item = anItem({ repeats: 4, pause: { kind: 'rest', seconds: 15 }, kickBetween });
    expect(practiceTime({ items: [item] }, pace)).toEqual({
      seconds: 310,
      fromPaceSeconds: 250,
      tightItemIds: [],
    });
  });

  it('names items whose send-off is too short for their swimming', () => {
    const tight = anItem({ pause: { kind: 'send-off', seconds: 24 } });
    expect(practiceTime({ items: [tight] }, pace).tightItemIds).toEqual(['item-1']);
    expect(practiceTime({ items: [] }, pace).seconds).toBe(0);
  });
});
