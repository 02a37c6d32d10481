import { describe, expect, it } from 'vitest';
import { catalogue } from '#core/measures/families';
import { cautionCodes, cautions, filmingCautions, underwaterCautions } from '#core/practice/caution';
import { drillById, drillLibrary } from '#core/practice/drill-library';
import { drillSchema } from '#core/practice/drill-schema';
import { itemCautions, planWarningWords } from '#core/practice/item-cautions';
import { neverCompared } from '#core/measures/never-compared';
import { anItem } from './a-practice';

describe('the drill library', () => {
  it('holds whole drills with ids of their own', () => {
    for (const drill of drillLibrary) expect(drillSchema.safeParse(drill).error, drill.id).toBeUndefined();
    expect(new Set(drillLibrary.map(({ id }) => id)).size).toBe(drillLibrary.length);
    expect(drillLibrary.length).toBeGreaterThanOrEqual(15);
  });

  it('names only readings that exist', () => {
    const known = new Set(catalogue.map(({ id }) => id));
    const unknown = drillLibrary.flatMap(({ id, readings }) =>
      readings.filter((reading) => !known.has(reading)).map((reading) => `${id}: ${reading}`),
    );
    expect(unknown).toEqual([]);
  });

  it('offers no drill measured by time or distance under water', () => {
    for (const { id, readings } of drillLibrary) expect(readings.filter(neverCompared), id).toEqual([]);
  });

  it('puts every caution of underwater repeats on every underwater drill', () => {
    const under = drillLibrary.filter((drill) => drill.underwater);
    expect(under.length).toBeGreaterThan(0);
    for (const drill of under)
      expect(drill.cautions).toEqual(expect.arrayContaining([...underwaterCautions]));
  });

  it('says of every drill on the back to mind the wall', () => {
    for (const drill of drillLibrary.filter(({ sideUp }) => sideUp === 'back'))
      expect(drill.cautions, drill.id).toContain('on-the-back-wall');
  });

  it('keeps one-arm patterns even', () => {
    const uneven = drillLibrary.filter(({ pattern }) => {
      const by = (arm: string): number =>
        (pattern?.runs ?? []).filter((run) => run.arm === arm).reduce((sum, { count }) => sum + count, 0);
      return by('right') !== by('left');
    });
    expect(uneven).toEqual([]);
  });

  it('lets the coach’s own drill stand before one of the library', () => {
    const library = drillById('kick-in-kick-out', []);
    if (!library) throw new Error('the library has lost a drill');
    const own = { ...library, name: 'In and out' };
    expect(drillById('kick-in-kick-out', [own])).toBe(own);
    expect(drillById('no-such-drill', [own])).toBeNull();
  });
});

describe('cautions of an item', () => {
  it('stand on every underwater item, whatever its drill says, each once', () => {
    const found = itemCautions(anItem({ underwater: true }), null).cautions;
    expect(found).toEqual([...underwaterCautions]);
    const drill = drillById('streamline-kick-strokes-at-ends', []);
    expect(itemCautions(anItem({ underwater: true }), drill).cautions).toEqual(found);
  });

  it('ask for rest between underwater repeats, and for the item to say that it goes under', () => {
    const drill = drillById('streamline-kick-strokes-at-ends', []);
    const warned = itemCautions(anItem({ pause: null }), drill).warnings;
    expect(warned.map(({ code }) => code)).toEqual(['underwater-without-pause', 'underwater-not-said']);
    for (const each of warned) expect(planWarningWords(each)).toMatch(/\.$/);
    expect(itemCautions(anItem({ underwater: true }), drill).warnings).toEqual([]);
    expect(itemCautions(anItem({ underwater: true, repeats: 1, pause: null }), null).warnings).toEqual([]);
  });

  it('are silent for a plain item on the front', () => {
    expect(itemCautions(anItem(), null)).toEqual({ cautions: [], warnings: [] });
  });

  it('mind the wall when the kick between is on the back', () => {
    const kickBetween = { metres: 25, aids: [], arms: 'stretched' as const, sideUp: 'back' as const };
    expect(itemCautions(anItem({ kickBetween }), null).cautions).toEqual(['on-the-back-wall']);
  });

  it('have words and a source each, and filming has its own', () => {
    for (const code of cautionCodes) {
      expect(cautions[code].words).toMatch(/\.$/);
      expect(cautions[code].source).not.toBe('');
    }
    expect(filmingCautions).toContain('film-consent');
  });
});
