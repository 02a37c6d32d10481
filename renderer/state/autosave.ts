import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HostError } from '#core/host-contract/host-error';
import type { Swim } from '#core/swim-file/swim-schema';
import type { HostClient } from '../host/host-client';
import { sameMarks } from './same-marks';
import type { SwimDocument } from './swim-document';
import type { SwimJournal } from './swim-journal';

export type SaveStatus =
  | { readonly kind: 'saved'; readonly at: Date | null }
  | { readonly kind: 'unsaved' }
  | { readonly kind: 'saving' }
  /** The changes are in memory and, when `journalled`, in the window's own storage too. */
  | { readonly kind: 'failed'; readonly error: HostError; readonly journalled: boolean }
  /** The file on disk was changed by someone else; both versions exist until the coach chooses. */
  | { readonly kind: 'conflict'; readonly theirs: Swim; readonly theirRevision: string };

export interface Autosave {
  readonly status: StoreApi<{ readonly status: SaveStatus }>;
  /** Writes what is unsaved now; resolves when the write has ended, well or badly. */
  flush(): Promise<void>;
  /** For a page that is going away: keeps the changes in the window's storage at once, then starts a write. */
  leave(): void;
  /** Ends a conflict: either version stays on screen, and the other is kept beside the swim by the host. */
  keepMine(): Promise<void>;
  takeTheirs(): void;
  close(): Promise<void>;
}

export interface AutosaveOptions {
  readonly document: SwimDocument;
  readonly host: Pick<HostClient, 'call'>;
  readonly journal: SwimJournal;
  readonly revision: string;
  readonly now: () => Date;
  /** True when what is on screen is newer than the disk from the start (a replayed journal). */
  readonly unsavedFromStart?: boolean;
  /** Milliseconds of quiet before a write, and the longest a change may wait. Our defaults. */
  readonly quiet?: number;
  readonly longest?: number;
}

/** Waits between tries after a failed write, milliseconds; the last repeats. Our defaults. */
const retryAfter = [2000, 5000, 15_000, 30_000];

export function createAutosave(options: AutosaveOptions): Autosave {
  const { document, host, journal, now, quiet = 350, longest = 900 } = options;
  const status = createStore<{ readonly status: SaveStatus }>(() => ({
    status: options.unsavedFromStart ? { kind: 'unsaved' } : { kind: 'saved', at: null },
  }));
  const say = (next: SaveStatus): void => status.setState({ status: next });

  let revision = options.revision;
  let savedSwim: Swim | null = options.unsavedFromStart ? null : document.swim();
  let writing: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let waitingSince: number | null = null;
  let failures = 0;
  /** What this window has sent or found unsent: a file that says the same is our own, whenever it landed. */
  let sent: Swim[] = options.unsavedFromStart ? [document.swim()] : [];
  let closed = false;

  const settled = (): boolean => savedSwim === document.swim();
  const inConflict = (): boolean => status.getState().status.kind === 'conflict';
  const clearTimer = (): void => {
    if (timer) clearTimeout(timer);
    timer = null;
  };
  const keepInJournal = (): boolean =>
    journal.keep({ baseRevision: revision, keptAt: now().toISOString(), swim: document.swim() });

  const write = async (): Promise<void> => {
    const swim = document.swim();
    say({ kind: 'saving' });
    waitingSince = null;
    sent = [...sent.slice(-3), swim];
    const result = await host.call('swim/write', {
      swim: { ...swim, changedAt: now().toISOString() },
      baseRevision: revision,
    });
    if (result.ok) {
      revision = result.value.revision;
      savedSwim = swim;
      failures = 0;
      sent = [];
      if (settled()) {
        journal.forget(swim.id);
        say({ kind: 'saved', at: now() });
      } else {
        say({ kind: 'unsaved' });
        schedule(quiet);
      }
      return;
    }
    const journalled = keepInJournal();
    if (result.error.code === 'conflict') {
      const read = await host.call('swim/read', { id: swim.id });
      if (read.ok && sent.some((each) => sameMarks(each, read.value.swim))) {
        revision = read.value.revision;
        say({ kind: 'unsaved' });
        schedule(0);
        return;
      }
      if (read.ok) {
        say({ kind: 'conflict', theirs: read.value.swim, theirRevision: read.value.revision });
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

  const unsubscribe = document.store.subscribe((state, before) => {
    if (state.inGesture || inConflict()) return;
    if (state.swim === before.swim && state.inGesture === before.inGesture) return;
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
      await host.call('swim/write', { swim: current.theirs, baseRevision: revision });
      revision = current.theirRevision;
      savedSwim = null;
      say({ kind: 'unsaved' });
      await start();
    },
    takeTheirs() {
      const { status: current } = status.getState();
      if (current.kind !== 'conflict') return;
      revision = current.theirRevision;
      document.replace(current.theirs);
      savedSwim = current.theirs;
      journal.forget(current.theirs.id);
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
