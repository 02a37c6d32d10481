import { useCallback, useMemo, useRef, useState } from 'react';
import type { SwimGroup } from '../swims/filter-swims';

export interface Choice {
  /** Chosen swims that are in sight of the filter, in their order on the shelf. */
  readonly ids: readonly string[];
  readonly set: ReadonlySet<string>;
  readonly choose: (swimId: string, along: boolean) => void;
  readonly all: () => void;
  readonly none: () => void;
}

const noIds: ReadonlySet<string> = new Set();

/** Which swims are chosen to be changed together. What the filter hides is not among them: nothing unseen is changed. */
export function useChoice(groups: readonly SwimGroup[]): Choice {
  const [chosen, setChosen] = useState<ReadonlySet<string>>(noIds);
  const order = useMemo(() => groups.flatMap(({ swims }) => swims.map(({ id }) => id)), [groups]);
  const latest = useRef<string | null>(null);
  const orderNow = useRef(order);
  orderNow.current = order;
  const choose = useCallback((id: string, along: boolean) => {
    const from = latest.current === null ? -1 : orderNow.current.indexOf(latest.current);
    const to = orderNow.current.indexOf(id);
    latest.current = id;
    setChosen((before) => {
      const next = new Set(before);
      if (along && from >= 0)
        for (const each of orderNow.current.slice(Math.min(from, to), Math.max(from, to) + 1)) next.add(each);
      else if (!next.delete(id)) next.add(id);
      return next;
    });
  }, []);
  const ids = useMemo(() => (chosen.size === 0 ? [] : order.filter((id) => chosen.has(id))), [order, chosen]);
  return {
    ids,
    set: useMemo(() => (ids.length === 0 ? noIds : new Set(ids)), [ids]),
    choose,
    all: useCallback(() => setChosen(new Set(orderNow.current)), []),
    none: useCallback(() => setChosen(noIds), []),
  };
}
