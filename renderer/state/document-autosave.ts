import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HostError, Result } from '#core/host-contract/host-error';
import type { Author, Lineage } from '#core/host-contract/operations/lineage';
import { makeId } from './make-id';
import { sayTheSame } from './same-marks';
import type { UnsavedEntry } from './unsaved-journal';

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
  /** With a lineage the host knows this window's own earlier writes, also ones whose answer never arrived. */
  write(
    value: T,
    baseRevision: string | null,
    lineage?: Lineage,
  ): Promise<Result<{ readonly revision: string }>>;
  read(): Promise<Result<{ readonly value: T; readonly revision: string }>>;
  readonly journal: {
    keep(entry: UnsavedEntry<T>): boolean;
    /** Drops entries that hold nothing beyond what these authors had done. */
    forget(authors: readonly Author[]): void;
  };
  /** On disk now; null: not there yet. */
  readonly revision: string | null;
  readonly now: () => Date;
  /** Milliseconds that never run backward, as the time of day may. The page's own clock unless given. */
  readonly steady?: () => number;
  /** True when what is on screen is newer than the disk from the start (a replayed journal). */
  readonly unsavedFromStart?: boolean;
  /** Whose unsaved work is on screen from the start. */
  readonly grewFrom?: readonly Author[];
  /** Milliseconds of quiet before a write, and the longest a change may wait. Our defaults. */
  readonly quiet?: number;
  readonly longest?: number;
}

/** Waits between tries after a failed write, milliseconds; the last repeats. Our defaults. */
const retryAfter = [2000, 5000, 15_000, 30_000];

export function createDocumentAutosave<T extends { readonly changedAt: string }>(
  options: DocumentAutosaveOptions<T>,
): DocumentAutosave<T> {
  const { document, journal, now, steady = () => performance.now(), quiet = 350, longest = 900 } = options;
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
  /** This window's work on the document: its name, and how many changes it has come to. */
  let writer = makeId();
  let step = 0;
  let grewFrom: readonly Author[] = options.grewFrom ?? [];
  /** What the host was last told while the coach has not yet chosen; it lies beside the file. */
  let beside: T | null = null;

  const settled = (): boolean => saved === document.current();
  const inConflict = (): boolean => status.getState().status.kind === 'conflict';
  const nothingToWrite = (): boolean => settled() || (inConflict() && beside === document.current());
  const clearTimer = (): void => {
    if (timer) clearTimeout(timer);
    timer = null;
  };
  const lineage = (): Lineage => ({ writer, step, grewFrom: [...grewFrom] });
  const stamped = (value: T): T => ({ ...value, changedAt: now().toISOString() });
  const keepInJournal = (): boolean => {
    const kept = journal.keep({
      baseRevision: revision,
      keptAt: now().toISOString(),
      value: document.current(),
      ...lineage(),
    });
    // this entry holds what those it grew from did
    if (kept) journal.forget(grewFrom);
    return kept;
  };

  const write = async (): Promise<void> => {
    const value = document.current();
    const from = lineage();
    const choosing = inConflict();
    if (!choosing) say({ kind: 'saving' });
    waitingSince = null;
    sent = [...sent.slice(-3), value];
    const result = await options.write(stamped(value), revision, from);
    // the coach went on with the other version meanwhile
    if (from.writer !== writer) return;
    if (result.ok) {
      revision = result.value.revision;
      saved = value;
      beside = null;
      failures = 0;
      sent = [];
      journal.forget([from, ...from.grewFrom]);
      if (settled()) say({ kind: 'saved', at: now() });
      else {
        say({ kind: 'unsaved' });
        schedule(quiet);
      }
      return;
    }
    const journalled = keepInJournal();
    if (result.error.code === 'conflict') {
      const read = await options.read();
      if (from.writer !== writer) return;
      if (read.ok && sent.some((each) => sayTheSame(each, read.value.value))) {
        revision = read.value.revision;
        say({ kind: 'unsaved' });
        schedule(0);
        return;
      }
      if (read.ok) {
        beside = value;
        say({ kind: 'conflict', theirs: read.value.value, theirRevision: read.value.revision });
        if (!nothingToWrite()) schedule(quiet);
        return;
      }
    }
    if (!choosing) say({ kind: 'failed', error: result.error, journalled });
    schedule(retryAfter[Math.min(failures++, retryAfter.length - 1)] ?? 30_000);
  };

  const start = (): Promise<void> => {
    clearTimer();
    if (writing) return writing.then(() => (nothingToWrite() || closed ? undefined : start()));
    if (nothingToWrite()) return Promise.resolve();
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
    if (value !== before) step += 1;
    if (inGesture) return;
    if (value === before && inGesture === wasInGesture) return;
    if (settled()) return;
    // while the coach has not chosen, what is marked meanwhile is kept beside the file as it would be in it
    if (inConflict()) keepInJournal();
    else if (status.getState().status.kind !== 'failed') say({ kind: 'unsaved' });
    waitingSince ??= steady();
    schedule(Math.max(0, Math.min(quiet, waitingSince + longest - steady())));
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
      // a write under way says again what they have
      clearTimer();
      if (writing) await writing;
      const { status: current } = status.getState();
      if (current.kind !== 'conflict') return;
      // A write on an outdated base is refused and kept beside the file: so their version stays too. It gets a new
      // date, as the very text that is on disk would count as written.
      await options.write(stamped(current.theirs), revision);
      revision = current.theirRevision;
      saved = null;
      say({ kind: 'unsaved' });
      await start();
    },
    takeTheirs() {
      const { status: current } = status.getState();
      if (current.kind !== 'conflict') return;
      const mine = document.current();
      const from = lineage();
      const forget = (): void => journal.forget([from, ...from.grewFrom]);
      if (beside === mine) forget();
      else {
        keepInJournal();
        void options.write(stamped(mine), revision, from).then((answer) => {
          if (answer.ok || answer.error.code === 'conflict') forget();
        });
      }
      // what comes now is other work: it must not write over mine, which lies beside the file
      writer = makeId();
      step = 0;
      grewFrom = [];
      beside = null;
      clearTimer();
      revision = current.theirRevision;
      saved = current.theirs;
      document.replace(current.theirs);
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
