import { describe, expect, it } from 'vitest';
import { countsHeld } from '#core/practice/count-held';
import type { LogEntry } from '#core/practice/practice-schema';
import { aPractice, anEntry, anItem } from './a-practice';

const slow = (counts: readonly (number | null)[]): LogEntry[] =>
  counts.map((count, repeat) => anEntry({ id: `slow-${repeat}`, repeat, count, effort: 'easy' }));
const fast = (count: number | null): LogEntry => anEntry({ id: 'full', repeat: 5, count, effort: 'full' });
const held = (counts: readonly (number | null)[], full: number | null, change = {}) =>
  countsHeld(aPractice({ items: [anItem(change)], log: [...slow(counts), fast(full)] }));

describe('the count at full effort', () => {
  it('is held with the same or fewer strokes than slow, lost with one more', () => {
    expect(held([8, 8], 8).compared[0]).toMatchObject({ verdict: 'held', more: 0, slowCount: 8 });
    expect(held([8, 8], 7).compared[0]).toMatchObject({ verdict: 'held', more: -1 });
    expect(held([8, 8], 9).compared[0]).toMatchObject({ verdict: 'lost', more: 1 });
  });

  it('is held against the lower middle of the slow counts, a whole count somebody swam', () => {
    expect(held([8, 9, 9], 9).compared[0]).toMatchObject({ slowCount: 9, verdict: 'held' });
    expect(held([8, 9], 9).compared[0]).toMatchObject({ slowCount: 8, verdict: 'lost' });
    expect(held([null, 8], 8).compared[0]?.slowEntryIds).toEqual(['slow-1']);
  });

  it('is not judged without a count on both sides, and says why', () => {
    expect(held([8], null).notCompared).toEqual([{ entryId: 'full', reason: 'no-count' }]);
    expect(held([], 8).notCompared).toEqual([{ entryId: 'full', reason: 'no-slow-count' }]);
    expect(held([null], 8).notCompared).toEqual([{ entryId: 'full', reason: 'no-slow-count' }]);
  });

  it('is held only against the same swimmer, distance and aids', () => {
    const items = [
      anItem(),
      anItem({ id: 'item-2', distanceMetres: 50, effort: 'easy' }),
      anItem({ id: 'item-3', aids: ['fins'], effort: 'easy' }),
    ];
    const log = [
      fast(8),
      anEntry({ id: 'a', itemId: 'item-2', count: 16 }),
      anEntry({ id: 'b', itemId: 'item-3', count: 6 }),
      anEntry({ id: 'c', repeat: 1, swimmerId: 'swimmer-2', effort: 'easy', count: 9 }),
    ];
    expect(countsHeld(aPractice({ items, log })).notCompared).toEqual([
      { entryId: 'full', reason: 'no-slow-count' },
    ]);
  });

  it('takes the effort of the item where the entry says none', () => {
    const items = [anItem({ effort: 'easy' }), anItem({ id: 'item-2', effort: 'full' })];
    const log = [anEntry({ count: 8 }), anEntry({ id: 'log-2', itemId: 'item-2', count: 9 })];
    expect(countsHeld(aPractice({ items, log })).compared[0]).toMatchObject({
      verdict: 'lost',
      slowCount: 8,
    });
  });

  it('is never asked of underwater items', () => {
    expect(held([8], 7, { underwater: true })).toEqual({ compared: [], notCompared: [] });
  });
});
