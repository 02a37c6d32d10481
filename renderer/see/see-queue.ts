import { z } from 'zod';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { idSchema } from '#core/swim-file/swim-schema';
import type { WindowMemory } from '../host/window-memory';

/** Swims in which the swimmer is to be seen, one after the other. */
export interface SeeQueue {
  /** In their order; the first is looked at where `now` says so. */
  readonly waiting: readonly string[];
  readonly now: { readonly swimId: string; readonly share: number } | null;
  /** Why nothing was seen in some, in the coach's words. */
  readonly refused: ReadonlyMap<string, string>;
}
export type SeeQueueStore = StoreApi<SeeQueue>;

const memoryKey = 'submark.see-queue';
/** As many as the window may remember. */
const most = 400;
const keptSchema = z.array(idSchema).max(most);

/** The queue, as it was when the window was closed. It is kept with every change of what waits. */
export function createSeeQueue(
  memory: Pick<WindowMemory, 'getItem' | 'setItem' | 'removeItem' | 'ready'>,
): SeeQueueStore {
  const store = createStore<SeeQueue>(() => ({ waiting: [], now: null, refused: new Map() }));
  void memory.ready.then(() => {
    const kept = keptIds(memory.getItem(memoryKey));
    if (kept.length > 0) addToQueue(store, kept);
    store.subscribe(({ waiting }, { waiting: before }) => {
      if (waiting === before) return;
      if (waiting.length === 0) memory.removeItem(memoryKey);
      else memory.setItem(memoryKey, JSON.stringify(waiting));
    });
  });
  return store;
}

function keptIds(text: string | null): readonly string[] {
  if (text === null) return [];
  try {
    const kept = keptSchema.safeParse(JSON.parse(text));
    return kept.success ? kept.data : [];
  } catch (problem) {
    if (problem instanceof SyntaxError) return [];
    throw problem;
  }
}

/** Puts swims at the end; those that wait already keep their place. */
export function addToQueue(store: SeeQueueStore, swimIds: readonly string[]): void {
  store.setState(({ waiting, refused }) => ({
    waiting: [...new Set([...waiting, ...swimIds])].slice(0, most),
    refused: new Map([...refused].filter(([id]) => !swimIds.includes(id))),
  }));
}

/** Takes a swim out; `refused`: why nothing was seen in it. */
export function leaveQueue(store: SeeQueueStore, swimId: string, refused: string | null = null): void {
  store.setState(({ waiting, now, refused: before }) => ({
    waiting: waiting.filter((id) => id !== swimId),
    now: now?.swimId === swimId ? null : now,
    refused: refused === null ? before : new Map([...before, [swimId, refused]]),
  }));
}

/** Stops what is under way and forgets what waits. */
export const emptyQueue = (store: SeeQueueStore): void => store.setState({ waiting: [], now: null });
