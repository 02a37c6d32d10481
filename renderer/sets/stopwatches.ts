import { createStore, type StoreApi } from 'zustand/vanilla';

/** Watches that run side by side, one a swimmer. */
export interface Stopwatches {
  /** When each running watch was started, by swimmer, on the caller's clock in milliseconds. */
  readonly store: StoreApi<{ readonly started: ReadonlyMap<string, number> }>;
  start(who: string): void;
  /** Seconds since its start, to the tenth, and the watch is still; null when it was not running. */
  stop(who: string): number | null;
  /** Seconds so far; null when it is not running. */
  read(who: string): number | null;
  /** Stills every watch. */
  clear(): void;
}

export function createStopwatches(clock: () => number): Stopwatches {
  const store = createStore<{ readonly started: ReadonlyMap<string, number> }>(() => ({
    started: new Map(),
  }));
  const read = (who: string): number | null => {
    const from = store.getState().started.get(who);
    return from === undefined ? null : (clock() - from) / 1000;
  };
  return {
    store,
    read,
    start(who) {
      store.setState(({ started }) => ({ started: new Map([...started, [who, clock()]]) }));
    },
    stop(who) {
      const seconds = read(who);
      store.setState(({ started }) => ({ started: new Map([...started].filter(([each]) => each !== who)) }));
      return seconds === null ? null : Math.round(seconds * 10) / 10;
    },
    clear: () => store.setState({ started: new Map() }),
  };
}
