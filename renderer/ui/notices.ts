import { createStore, type StoreApi } from 'zustand/vanilla';

interface NoticeAction {
  readonly label: string;
  readonly run: () => void;
}
interface Notice {
  readonly words: string;
  readonly action: NoticeAction | null;
}
/** A short message that goes away by itself; with an action it stays longer. */
export type Say = (words: string, action?: NoticeAction) => void;

export interface Notices {
  readonly store: StoreApi<{ readonly notice: Notice | null }>;
  readonly say: Say;
  readonly dismiss: () => void;
  /** Keeps the message while the coach is on it. */
  readonly hold: () => void;
  /** Lets it go away again, after its time. */
  readonly release: () => void;
}

/** Our defaults: time enough to read two short sentences; more where there is something to press. */
const plainMilliseconds = 6_000;
const actionMilliseconds = 12_000;

interface Clock {
  readonly after: (milliseconds: number, then: () => void) => () => void;
}
const windowClock: Clock = {
  after: (milliseconds, then) => {
    const timer = setTimeout(then, milliseconds);
    return () => clearTimeout(timer);
  },
};

/** What was just said; a newer message takes the place of an older one. */
export function createNotices(clock: Clock = windowClock): Notices {
  const store = createStore<{ readonly notice: Notice | null }>(() => ({ notice: null }));
  let forget: (() => void) | null = null;
  const hold = (): void => {
    forget?.();
    forget = null;
  };
  const dismiss = (): void => {
    hold();
    store.setState({ notice: null });
  };
  const release = (): void => {
    hold();
    const { notice } = store.getState();
    if (notice) forget = clock.after(notice.action ? actionMilliseconds : plainMilliseconds, dismiss);
  };
  return {
    store,
    say: (words, action) => {
      store.setState({ notice: words === '' ? null : { words, action: action ?? null } });
      release();
    },
    dismiss,
    hold,
    release,
  };
}
