import { noTags } from '../swim-file/condition-tags';
import type { PracticeItem } from './practice-schema';

/** An item to begin with: four repeats of plain butterfly, nothing else said. `metres`: of each repeat. */
export function plainItem(id: string, metres: number): PracticeItem {
  return {
    id,
    repeats: 4,
    distanceMetres: metres,
    stroke: 'butterfly',
    drillId: null,
    words: '',
    sideUp: 'front',
    arms: 'stroking',
    aids: [],
    underwater: false,
    tags: noTags,
    kickBetween: null,
    pause: null,
    pattern: null,
    breathingEvery: null,
    targetCount: null,
    effort: null,
    ladder: null,
    swimmerIds: null,
    note: '',
  };
}
