import { createStore, type StoreApi } from 'zustand/vanilla';
import { noFilter, type ShelfFilter } from '../swims/filter-swims';

/** What the shelf keeps while the coach is on another screen: the search, and the swim gone to. */
export type ShelfMemory = StoreApi<{ readonly filter: ShelfFilter; readonly swimId: string | null }>;

export const createShelfMemory = (): ShelfMemory => createStore(() => ({ filter: noFilter, swimId: null }));
