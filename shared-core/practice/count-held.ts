import type { LogEntry, Practice, PracticeItem } from './practice-schema';
import { type PlannedRepeat, unfoldItem } from './unfold-item';
import { likeKey, workOfItem } from './work';

/** One full-effort repeat against the slow count of the same swimmer, work, distance and aids. */
export interface CountHeld {
  readonly entryId: string;
  readonly swimmerId: string | null;
  readonly slowCount: number;
  readonly fullCount: number;
  /** Strokes more than slow; below zero: fewer. */
  readonly more: number;
  /** Counts are whole, so there is no finer call than this: the same or fewer is held. */
  readonly verdict: 'held' | 'lost';
  /** Slow repeats the slow count is the lower middle of. */
  readonly slowEntryIds: readonly string[];
}

export interface CountsHeld {
  readonly compared: readonly CountHeld[];
  /** Full-effort repeats that can't be judged, and why. */
  readonly notCompared: readonly {
    readonly entryId: string;
    readonly reason: 'no-count' | 'no-slow-count';
  }[];
}

interface Repeat {
  readonly entry: LogEntry;
  readonly effort: LogEntry['effort'];
  readonly like: string;
}

/**
 * Whether the stroke count of slow swimming (easy or steady) was held at full effort. Compared only within one
 * practice and like with like. An entry's own effort rules, else its item's. The slow count is the lower of the two
 * middle counts, so that it is always a whole number somebody swam. Underwater items are left out: there a lower count
 * would only mean more distance under water.
 */
export function countsHeld(practice: Practice): CountsHeld {
  const repeats = loggedRepeats(practice);
  const compared: CountHeld[] = [];
  const notCompared: { entryId: string; reason: 'no-count' | 'no-slow-count' }[] = [];
  for (const { entry, like } of repeats.filter(({ effort }) => effort === 'full')) {
    const slow = repeats.flatMap((each) =>
      each.like === like && (each.effort === 'easy' || each.effort === 'steady') && each.entry.count !== null
        ? [{ id: each.entry.id, count: each.entry.count }]
        : [],
    );
    const slowCount = lowerMiddle(slow.map(({ count }) => count));
    if (entry.count === null) notCompared.push({ entryId: entry.id, reason: 'no-count' });
    else if (slowCount === null) notCompared.push({ entryId: entry.id, reason: 'no-slow-count' });
    else
      compared.push({
        entryId: entry.id,
        swimmerId: entry.swimmerId,
        slowCount,
        fullCount: entry.count,
        more: entry.count - slowCount,
        verdict: entry.count <= slowCount ? 'held' : 'lost',
        slowEntryIds: slow.map(({ id }) => id),
      });
  }
  return { compared, notCompared };
}

function loggedRepeats(practice: Practice): readonly Repeat[] {
  const items = new Map(practice.items.map((item) => [item.id, { item, planned: unfoldItem(item) }]));
  return practice.log.flatMap((entry): Repeat[] => {
    const found = items.get(entry.itemId);
    const planned = found?.planned[entry.repeat];
    if (!found || !planned || found.item.underwater) return [];
    return [{ entry, effort: entry.effort ?? found.item.effort, like: alike(entry, found.item, planned) }];
  });
}

function alike(entry: LogEntry, item: PracticeItem, planned: PlannedRepeat): string {
  const pattern = planned.pattern?.runs.map(({ arm, count }) => `${count}${arm}`).join(' ') ?? '';
  return JSON.stringify([entry.swimmerId, likeKey(workOfItem(item)), planned.distanceMetres, pattern]);
}

function lowerMiddle(counts: readonly number[]): number | null {
  return [...counts].sort((a, b) => a - b)[(counts.length - 1) >> 1] ?? null;
}
