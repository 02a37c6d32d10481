import { useCallback, useMemo, useState } from 'react';
import type { Practice, PracticeItem } from '#core/practice/practice-schema';
import { type PlannedRepeat, unfoldItem } from '#core/practice/unfold-item';
import type { Stopwatches } from './stopwatches';

/** Where on the card the deck is. Going elsewhere stills the watches. */
export interface DeckPlace {
  /** Null: nothing is planned. */
  readonly at: {
    readonly item: PracticeItem;
    readonly planned: readonly PlannedRepeat[];
    readonly now: PlannedRepeat;
  } | null;
  /** To the next repeat, over the end of an item into the next. */
  step(by: -1 | 1): void;
  toItem(id: string): void;
  toRepeat(repeat: number): void;
}

export function useDeckPlace(practice: Practice, watches: Stopwatches): DeckPlace {
  const [itemId, setItemId] = useState<string | null>(practice.items[0]?.id ?? null);
  const [repeat, setRepeat] = useState(0);
  const item = practice.items.find(({ id }) => id === itemId) ?? practice.items[0] ?? null;
  const planned = useMemo(() => (item ? unfoldItem(item) : []), [item]);
  const now = planned[Math.min(repeat, planned.length - 1)] ?? null;
  const step = useCallback(
    (by: -1 | 1) => {
      if (!item) return;
      watches.clear();
      const next = Math.min(repeat, planned.length - 1) + by;
      if (next >= 0 && next < planned.length) return setRepeat(next);
      const other = practice.items[practice.items.indexOf(item) + by];
      if (!other) return;
      setItemId(other.id);
      setRepeat(by > 0 ? 0 : unfoldItem(other).length - 1);
    },
    [item, repeat, planned, practice.items, watches],
  );
  const at = useMemo(() => (item && now ? { item, planned, now } : null), [item, planned, now]);
  return {
    at,
    step,
    toItem(id) {
      watches.clear();
      setItemId(id);
      setRepeat(0);
    },
    toRepeat(to) {
      watches.clear();
      setRepeat(to);
    },
  };
}
