import type { Drill } from '#core/practice/drill-schema';
import { type Practice, type PracticeItem, practiceFileVersion } from '#core/practice/practice-schema';

/** A practice with nothing in it yet. `day`: ISO day; `now`: ISO instant. */
export function newPractice(
  id: string,
  day: string,
  now: string,
  swimmerIds: readonly string[],
  poolMetres = 25,
): Practice {
  return {
    format: 'submark-practice',
    version: practiceFileVersion,
    id,
    createdAt: now,
    changedAt: now,
    date: day,
    title: '',
    poolMetres,
    swimmerIds: [...swimmerIds],
    pace: null,
    note: '',
    invented: false,
    items: [],
    log: [],
  };
}

/** The same plan on another day: nothing logged, ids of its own. */
export function planAgain(practice: Practice, makeId: () => string, day: string, now: string): Practice {
  return {
    ...practice,
    id: makeId(),
    createdAt: now,
    changedAt: now,
    date: day,
    items: practice.items.map((item) => ({ ...item, id: makeId() })),
    log: [],
  };
}

/** What a drill says of an item: how it is swum. Distance, pause and effort stay the coach's. */
export function withDrill(item: PracticeItem, drill: Drill | null): PracticeItem {
  if (!drill) return { ...item, drillId: null };
  const ladder = drill.underwater && item.ladder?.of === 'lengths' ? null : item.ladder;
  return {
    ...item,
    drillId: drill.id,
    words: '',
    stroke: drill.stroke,
    sideUp: drill.sideUp,
    arms: drill.arms,
    aids: [...drill.aids],
    underwater: drill.underwater,
    pattern: drill.pattern,
    ladder,
  };
}
