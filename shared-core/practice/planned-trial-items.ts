import { depths, headPositions, hipPositions, noTags } from '../swim-file/condition-tags';
import { aids, armPositions, sidesUp } from '../swim-file/swim-schema';
import { drillById } from './drill-library';
import type { Drill } from './drill-schema';
import { plainItem } from './plain-item';
import type { PracticeItem } from './practice-schema';
import type { PlannedTrialRepeat } from './trial-plan';
import type { TrialFactor } from './trial-row';
import type { Work } from './work';

/** Rest written down after each underwater repeat, seconds, so that none stands without one; our default, the coach's to change. */
const underwaterRestSeconds = 60;

interface Asked {
  readonly factor: TrialFactor;
  /** How the repeats are swum but for what is compared: that of the trial's swims. */
  readonly work: Work;
  readonly distanceMetres: number;
  /** Each condition in the coach's words, for the card. */
  readonly words: (condition: string) => string;
  readonly own: readonly Drill[];
  readonly makeId: () => string;
}

/**
 * A trial's planned repeats as items of a practice, one a repeat, in the drawn order: the condition stands in the item
 * itself (position, arms, aids, drill) where it can, and always in the note. A condition that no field of an item holds
 * stands in the note alone. Empty of an empty plan.
 */
export function plannedTrialItems(plan: readonly PlannedTrialRepeat[], asked: Asked): PracticeItem[] {
  const drill = drillById(asked.work.drill, asked.own);
  return plan.map(({ position, condition }) => {
    const item: PracticeItem = {
      ...plainItem(asked.makeId(), asked.distanceMetres),
      repeats: 1,
      stroke: asked.work.stroke,
      drillId: drill?.id ?? null,
      words: drill ? '' : asked.work.drill.slice(0, 200),
      sideUp: asked.work.sideUp,
      arms: asked.work.arms,
      aids: [...asked.work.aids],
      // a kick that no drill describes may well go under: rather a caution too many
      underwater: drill?.underwater ?? asked.work.stroke === 'dolphin-kick',
      note: `Repeat ${position + 1} of ${plan.length}: ${asked.words(condition)}`.slice(0, 2000),
      ...ofCondition(asked.factor, condition, asked.own),
    };
    return item.underwater
      ? { ...item, pause: { kind: 'rest', seconds: underwaterRestSeconds } as const }
      : item;
  });
}

const among = <T extends string>(list: readonly T[], word: string): T | undefined =>
  list.find((each) => each === word);

/** What a condition says of an item. */
function ofCondition(factor: TrialFactor, condition: string, own: readonly Drill[]): Partial<PracticeItem> {
  switch (factor.of) {
    case 'head': {
      const head = among(headPositions, condition);
      return head ? { tags: { ...noTags, head } } : {};
    }
    case 'hips': {
      const hips = among(hipPositions, condition);
      return hips ? { tags: { ...noTags, hips } } : {};
    }
    case 'depth': {
      const depth = among(depths, condition);
      // deeper than the surface is under water, and brings its cautions
      return depth ? { tags: { ...noTags, depth }, underwater: depth !== 'surface' } : {};
    }
    case 'arms': {
      const arms = among(armPositions, condition);
      return arms ? { arms } : {};
    }
    case 'sideUp': {
      const sideUp = among(sidesUp, condition);
      return sideUp ? { sideUp } : {};
    }
    case 'aids': {
      const named = condition === 'none' ? [] : condition.split('+').map((word) => among(aids, word));
      return named.every((aid) => aid !== undefined) ? { aids: named } : {};
    }
    case 'drill': {
      if (condition === 'plain') return { drillId: null, words: '', underwater: false };
      const drill = drillById(condition, own);
      return drill
        ? { drillId: drill.id, words: '', underwater: drill.underwater }
        : { drillId: null, words: condition };
    }
    case 'tag':
      return condition === factor.tag ? { tags: { ...noTags, free: [factor.tag] } } : {};
  }
}
