import { describe, expect, it } from 'vitest';
import { bodyContext } from '#core/measures/body/context/body-context';
import { bodyFamilies } from '#core/measures/body/body-families';
import { markedSwim, plainKick } from './model-swim';

describe('the catalogue of landmark readings', () => {
  it('yields one reading for each definition, in order', () => {
    const context = bodyContext(
      markedSwim({ ...plainKick, base: 'stroke', period: 1.1, shoulder: 0.07, cycles: 5 }),
    );
    for (const family of bodyFamilies) {
      expect(
        family
          .read(context)
          .map((r) => r.id)
          .sort(),
      ).toEqual(family.definitions.map((d) => d.id).sort());
    }
  });
  it('says in words what each is, for coach and swimmer, with a source', () => {
    const ids = new Set<string>();
    for (const d of bodyFamilies.flatMap((family) => family.definitions)) {
      expect(ids.has(d.id), d.id).toBe(false);
      ids.add(d.id);
      for (const words of [d.label, d.brief, d.definition, d.forCoach, d.forSwimmer, d.source]) {
        expect(words.length, d.id).toBeGreaterThan(3);
      }
    }
    expect(ids.size).toBeGreaterThan(80);
  });
});
