import { createStore } from 'zustand/vanilla';

/** Long work of this page: share done of each piece, 0 to 1, or null where it can't be told. */
export const workInHand = createStore<{ readonly work: ReadonlyMap<symbol, number | null> }>(() => ({
  work: new Map(),
}));

export interface Work {
  /** Share done, 0 to 1; null: it can't be told. */
  tell(share: number | null): void;
  end(): void;
}

/** Begins a piece of long work that the host does not know of, so that the window can show it and the computer stays awake. */
export function beginWork(): Work {
  const key = Symbol('work');
  const tell = (share: number | null): void =>
    workInHand.setState(({ work }) => ({ work: new Map(work).set(key, share) }));
  tell(null);
  return {
    tell,
    end() {
      workInHand.setState(({ work }) => {
        const rest = new Map(work);
        rest.delete(key);
        return { work: rest };
      });
    },
  };
}
