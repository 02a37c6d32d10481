import { createStore } from 'zustand/vanilla';
import { type ShortLists, shortListsSchema } from '#core/measures/short-list';
import { windowMemory } from '../host/window-memory';

const storageKey = 'submark.short-lists';

function read(): ShortLists {
  const text = windowMemory.getItem(storageKey);
  if (text === null) return {};
  try {
    const parsed = shortListsSchema.safeParse(JSON.parse(text));
    return parsed.success ? parsed.data : {};
  } catch (error) {
    // a list that can't be read is worth no message: the usual one does
    if (error instanceof SyntaxError) return {};
    throw error;
  }
}

/** The readings the coach chose to see first, by drill; the same in every window of this coach. */
export const shortListStore = createStore<{ readonly lists: ShortLists }>(() => ({ lists: read() }));
void windowMemory.ready.then(() => shortListStore.setState({ lists: read() }));

/** Keeps the lists as `change` makes them. */
export function changeShortLists(change: (lists: ShortLists) => ShortLists): void {
  const lists = change(shortListStore.getState().lists);
  if (Object.keys(lists).length === 0) windowMemory.removeItem(storageKey);
  else windowMemory.setItem(storageKey, JSON.stringify(lists));
  shortListStore.setState({ lists });
}
