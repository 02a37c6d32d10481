import { describe, expect, it } from 'vitest';
import { itemCautions } from '#core/practice/item-cautions';
import { plannedTrialItems } from '#core/practice/planned-trial-items';
import { practiceItemSchema } from '#core/practice/practice-schema';
import { trialPlan } from '#core/practice/trial-plan';
import type { TrialFactor } from '#core/practice/trial-row';
import { aTrialRow } from './a-trial-row';

const { work } = aTrialRow();
const items = (factor: TrialFactor, conditions: readonly string[]) => {
  const plan = trialPlan(conditions, 2, 7);
  if (!plan.ok) throw new Error(plan.fault.code);
  let next = 0;
  const made = plannedTrialItems(plan.repeats, {
    factor,
    work,
    distanceMetres: 15,
    words: (condition) => `words of ${condition}`,
    own: [],
    makeId: () => `item-${next++}`,
  });
  for (const item of made) expect(practiceItemSchema.safeParse(item).success).toBe(true);
  return { made, order: plan.repeats.map(({ condition }) => condition) };
};

describe('a planned trial put in a practice', () => {
  it('gives one repeat an item, in the very order drawn, with the condition in its note', () => {
    const { made, order } = items({ of: 'head' }, ['low', 'high']);
    expect(made.map(({ tags }) => tags.head)).toEqual(order);
    expect(made.map(({ note }) => note)).toEqual(
      order.map((each, i) => `Repeat ${i + 1} of 4: words of ${each}`),
    );
    expect(made.every(({ repeats, distanceMetres }) => repeats === 1 && distanceMetres === 15)).toBe(true);
  });

  it.each([
    [{ of: 'arms' }, ['folded', 'stretched'], 'arms'],
    [{ of: 'sideUp' }, ['back', 'front'], 'sideUp'],
  ] as const)('says the condition %o in the item’s own field', (factor, conditions, field) => {
    const { made, order } = items(factor, conditions);
    expect(made.map((item) => item[field])).toEqual(order);
  });

  it('says aids, drills and tags as the trial reads them', () => {
    const aided = items({ of: 'aids' }, ['none', 'fins+snorkel']);
    expect(aided.made.map(({ aids }) => aids.join('+') || 'none')).toEqual(aided.order);
    const tagged = items({ of: 'tag', tag: 'chin in' }, ['chin in', 'not chin in']);
    expect(tagged.made.map(({ tags }) => (tags.free[0] === 'chin in' ? 'chin in' : 'not chin in'))).toEqual(
      tagged.order,
    );
    const drills = items({ of: 'drill' }, ['plain', 'kick-front-folded']);
    expect(drills.made.map(({ drillId }) => drillId ?? 'plain')).toEqual(drills.order);
  });

  it('brings the cautions of what goes under water, with a rest, and never a distance of its own', () => {
    const { made } = items({ of: 'depth' }, ['surface', 'deep']);
    for (const item of made) {
      const deep = item.tags.depth === 'deep';
      expect(item.underwater).toBe(deep);
      expect(item.pause).toEqual(deep ? { kind: 'rest', seconds: 60 } : null);
      expect(itemCautions(item, null).cautions.length > 0).toBe(deep);
    }
  });

  it('keeps a condition that no field can hold in the note alone', () => {
    const { made } = items({ of: 'head' }, ['low', 'chin on chest']);
    const odd = made.find(({ note }) => note.includes('chin on chest'));
    expect(odd?.tags.head).toBeNull();
  });
});
