import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HostError, Result } from '#core/host-contract/host-error';
import { sayTheSame } from './same-marks';

export type SaveStatus<T> =
  | { readonly kind: 'saved'; readonly at: Date | null }
  | { readonly kind: 'unsaved' }
  | { readonly kind: 'saving' }
  /** The changes are in memory and, when `journalled`, in the window's own storage too. */
  | { readonly kind: 'failed'; readonly error: HostError; readonly journalled: boolean }
  /** The file on disk was changed by someone else; both versions exist until the coach chooses. */
  | { readonly kind: 'conflict'; readonly theirs: T; readonly theirRevision: string };

export interface DocumentAutosave<T> {
  readonly status: StoreApi<{ readonly status: SaveStatus<T> }>;
  /** Writes what is unsaved now; resolves when the write has ended, well or badly. */
  flush(): Promise<void>;
  /** For a page that is going away: keeps the changes in the window's storage at once, then starts a write. */
  leave(): void;
  /** Ends a conflict: either version stays on screen, and the other is kept beside the file by the host. */
  keepMine(): Promise<void>;
  takeTheirs(): void;
  close(): Promise<void>;
}

/** What saving must know of a document, and where it is written. */
export interface DocumentAutosaveOptions<T> {
  readonly document: {
    current(): T;
    commit(): void;
    replace(value: T): void;
    /** Calls at every change; the answer stops it. */
    subscribe(changed: (value: T, before: T, inGesture: boolean, wasInGesture: boolean) => void): () => void;
  };
  write(value: T, baseRevision: string | null): Promise<Result<{ readonly revision: string }>>;
  read(): Promise<Result<{ readonly value: T; readonly revision: string }>>;
  readonly journal: {
    keep(entry: {
      readonly baseRevision: string | null;
      readonly keptAt: string;
      readonly value: T;
    }): boolean;
    forget(): void;
  };
  /** On disk now; null: not there yet. */
  readonly revision: string | null;
  readonly now: () => Date;
  /** True when what is on screen is newer than the disk from the start (a replayed journal). */
  readonly unsavedFromStart?: boolean;
  /** Milliseconds of quiet before a write, and the longest a change may wait. Our defaults. */
  readonly quiet?: number;
  readonly longest?: number;
}

/** Waits between tries after a failed write, milliseconds; the last repeats. Our defaults. */
const retryAfter = [2000, 5000, 15_000, 30_000];

export function createDocumentAutosave<T extends { readonly changedAt: string }>(
  options: DocumentAutosaveOptions<T>,
): DocumentAutosave<T> {
  const { document, journal, now, quiet = 350, longest = 900 } = options;
  const status = createStore<{ readonly status: SaveStatus<T> }>(() => ({
    status: options.unsavedFromStart ? { kind: 'unsaved' } : { kind: 'saved', at: null },
  }));
  const say = (next: SaveStatus<T>): void => status.setState({ status: next });

  let revision = options.revision;
  let saved: T | null = options.unsavedFromStart ? null : document.current();
  let writing: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let waitingSince: number | null = null;
  let failures = 0;
  /** What this window has sent or found unsent: a file that says the same is our own, whenever it landed. */
  let sent: T[] = options.unsavedFromStart ? [document.current()] : [];
  let closed = false;

  const settled = (): boolean => saved === document.current();
  const inConflict = (): boolean => status.getState().status.kind === 'conflict';
  const clearTimer = (): void => {
    if (timer) clearTimeout(timer);
    timer = null;
  };
  const keepInJournal = (): boolean =>
    journal.keep({ baseRevision: revision, keptAt: now().toISOString(), value: document.current() });

  const write = async (): Promise<void> => {
    const value = document.current();
    say({ kind: 'saving' });
    waitingSince = null;
    sent = [...sent.slice(-3), value];
    const result = await options.write({ ...value, changedAt: now().toISOString() }, revision);
    if (result.ok) {
      revision = result.value.revision;
      saved = value;
      failures = 0;
      sent = [];
      if (settled()) {
        journal.forget();
        say({ kind: 'saved', at: now() });
      } else {
        say({ kind: 'unsaved' });
        schedule(quiet);
      }
      return;
    }
    const journalled = keepInJournal();
    if (result.error.code === 'conflict') {
      const read = await options.read();
      if (read.ok && sent.some((each) => sayTheSame(each, read.value.value))) {
        revision = read.value.revision;
        say({ kind: 'unsaved' });
        schedule(0);
        return;
      }
      if (read.ok) {
        say({ kind: 'conflict', theirs: read.value.value, theirRevision: read.value.revision });
        return;
      }
    }
    say({ kind: 'failed', error: result.error, journalled });
    schedule(retryAfter[Math.min(failures++, retryAfter.length - 1)] ?? 30_000);
  };

  const start = (): Promise<void> => {
    clearTimer();
    if (writing) return writing.then(() => (settled() || inConflict() || closed ? undefined : start()));
    if (settled() || inConflict()) return Promise.resolve();
    writing = write().finally(() => {
      writing = null;
    });
    return writing;
  };
  function schedule(wait: number): void {
    clearTimer();
    if (!closed) timer = setTimeout(() => void start(), wait);
  }

  const unsubscribe = document.subscribe((value, before, inGesture, wasInGesture) => {
    if (inGesture || inConflict()) return;
    if (value === before && inGesture === wasInGesture) return;
    if (settled()) return;
    if (status.getState().status.kind !== 'failed') say({ kind: 'unsaved' });
    waitingSince ??= now().getTime();
    schedule(Math.max(0, Math.min(quiet, waitingSince + longest - now().getTime())));
  });
  if (options.unsavedFromStart) schedule(0);

  return {
    status,
    flush: start,
    leave() {
      document.commit();
      if (settled()) return;
      keepInJournal();
      void start();
    },
    async keepMine() {
      const { status: current } = status.getState();
      if (current.kind !== 'conflict') return;
      // A write on an outdated base is refused and kept beside the swim: so their version stays too.
      await options.write(current.theirs, revision);
      revision = current.theirRevision;
      saved = null;
      say({ kind: 'unsaved' });
      await start();
    },
    takeTheirs() {
      const { status: current } = status.getState();
      if (current.kind !== 'conflict') return;
      revision = current.theirRevision;
      document.replace(current.theirs);
      saved = current.theirs;
      journal.forget();
      say({ kind: 'saved', at: null });
    },
    async close() {
      document.commit();
      if (!settled()) keepInJournal();
      await start();
      closed = true;
      clearTimer();
      unsubscribe();
    },
  };
}
