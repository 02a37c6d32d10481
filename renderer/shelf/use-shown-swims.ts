import { useCallback, useDeferredValue, useMemo } from 'react';
import { useStore } from 'zustand';
import { emptySquad } from '#core/swim-file/squad-file';
import { filterSwims, noFilter, type ShelfFilter } from '../swims/filter-swims';
import type { ShelfMemory } from './shelf-memory';
import type { Library } from '../swims/use-library';

/** The swims that the filter leaves, by swimmer, and the one that Tab leads to. */
export function useShownSwims(library: Library | null, memory: ShelfMemory) {
  const filter = useStore(memory, (state) => state.filter);
  const reached = useStore(memory, (state) => state.swimId);
  const asked = useDeferredValue(filter);
  const setFilter = useCallback((next: ShelfFilter) => memory.setState({ filter: next }), [memory]);
  const squad = library?.squad ?? emptySquad;
  const swims = library?.swims;
  const all = useMemo(() => filterSwims(swims ?? [], squad, noFilter), [swims, squad]);
  const groups = useMemo(() => filterSwims(swims ?? [], squad, asked), [swims, squad, asked]);
  const shown = groups.reduce((sum, group) => sum + group.swims.length, 0);
  const isReachable = groups.some((group) => group.swims.some((swim) => swim.id === reached));
  const tabStop = isReachable
    ? reached
    : (groups.find(({ swims: own }) => own.length > 0)?.swims[0]?.id ?? null);
  return { squad, filter, setFilter, all, groups, shown, tabStop };
}
