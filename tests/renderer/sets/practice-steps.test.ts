import { describe, expect, it } from 'vitest';
import { drillById } from '#core/practice/drill-library';
import { anEntry, anItem, aPractice } from '#tests/shared-core/practice/a-practice';
import { plainItem } from '#core/practice/plain-item';
import { planAgain, withDrill } from '../../../renderer/sets/new-practice';
import {
  addItem,
  changeItem,
  entryOf,
  logRepeat,
  moveItem,
  removeItem,
} from '../../../renderer/sets/practice-steps';
import { createKeptDocument } from '../../../renderer/documents/kept-document';

const ids = (items: readonly { readonly id: string }[]): string[] => items.map(({ id }) => id);

describe('planning a practice', () => {
  it('adds, moves and removes items, and takes each back', () => {
    const document = createKeptDocument(aPractice());
    document.run(addItem(plainItem('b', 25), 'item-1'));
    document.run(addItem(plainItem('c', 25), null));
    expect(ids(document.current().items)).toEqual(['item-1', 'b', 'c']);
    document.run(moveItem('c', -1));
    expect(ids(document.current().items)).toEqual(['item-1', 'c', 'b']);
    expect(document.run(moveItem('item-1', -1))).toBe(false);
    document.run(removeItem('c'));
    for (let step = 0; step < 4; step++) document.undo();
    expect(document.current()).toEqual(aPractice());
  });

  it('refuses an item that would grow distance under water, and says why', () => {
    const item = anItem({ underwater: true, ladder: { of: 'lengths', rungs: [1, 2], stepMetres: 25 } });
    expect(changeItem(item, 'change')).toEqual({
      ok: false,
      why: 'an underwater item can not grow its distance',
    });
  });

  it('takes from a drill how it is swum and leaves the distance to the coach', () => {
    const drill = drillById('streamline-kick-strokes-at-ends', []);
    const item = withDrill(anItem({ distanceMetres: 15, ladder: null }), drill);
    expect(item).toMatchObject({ stroke: 'dolphin-kick', underwater: true, distanceMetres: 15 });
    expect(changeItem(item, 'choose a drill').ok).toBe(true);
  });

  it('plans the same again on another day with nothing logged and ids of its own', () => {
    let at = 0;
    const again = planAgain(
      aPractice({ log: [anEntry()] }),
      () => `new-${at++}`,
      '2026-06-01',
      '2026-06-01T08:00:00.000Z',
    );
    expect(again).toMatchObject({ id: 'new-0', date: '2026-06-01', log: [] });
    expect(again.items.map(({ id }) => id)).toEqual(['new-1']);
    expect(again.items[0]).toMatchObject({ repeats: 6, distanceMetres: 25 });
  });
});

describe('logging on deck', () => {
  const key = { itemId: 'item-1', repeat: 2, swimmerId: 'swimmer-1' };

  it('makes one entry a repeat and swimmer, however often something is said of it', () => {
    const document = createKeptDocument(aPractice());
    document.run(logRepeat(key, { count: 8 }, 'log', () => 'first'));
    document.run(logRepeat(key, { timeSeconds: 18.4 }, 'log', () => 'second'));
    expect(document.current().log).toEqual([
      { id: 'first', ...key, count: 8, timeSeconds: 18.4, effort: null, note: '', swimId: null },
    ]);
    expect(entryOf(document.current(), { ...key, repeat: 1 })).toBeNull();
  });

  it('takes an entry out again when nothing is left of it, and undo brings it back', () => {
    const document = createKeptDocument(aPractice());
    document.run(logRepeat(key, { effort: 'full' }, 'log', () => 'only'));
    document.run(logRepeat(key, { effort: null }, 'log', () => 'other'));
    expect(document.current().log).toEqual([]);
    document.undo();
    expect(entryOf(document.current(), key)?.effort).toBe('full');
  });
});
