import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HostError, Result } from '#core/host-contract/host-error';
import type { Author, Lineage } from '#core/host-contract/operations/lineage';
import { makeId } from '../host/make-id';
import { oneAtATime } from './one-at-a-time';
import { savedOnLeaving } from './open-autosaves';
import {
  afterSaveEvent,
  beginSaving,
  type Dated,
  hasNothingToWrite,
  isSaved,
  type SaveEvent,
  type SaveStatus,
} from './save-machine';
import type { UnsavedEntry } from './unsaved-journal';

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

/**
 * Saves a document by itself. What is known of it is a state of save-machine.ts; here are the clock, the disk and the
 * window's own storage.
 */
export function createDocumentAutosave<T extends Dated>(
  options: DocumentAutosaveOptions<T>,
): DocumentAutosave<T> {
  const { document, now, steady = () => performance.now(), quiet = 350, longest = 900 } = options;
  const memory = createSaveMemory(options);
  const { status, state, advance, isSettled, hasNothing, keepInJournal } = memory;
  const write = createWriteOnce(options, memory, (wait) => turns.schedule(wait));
  let waitingSince: number | null = null;
  const turns = oneAtATime(
    () => {
      waitingSince = null;
      return write();
    },
    () => !hasNothing(),
  );

  const unsubscribe = document.subscribe((value, before, inGesture, wasInGesture) => {
    if (value !== before) advance({ kind: 'changed' });
    if (inGesture) return;
    if (value === before && inGesture === wasInGesture) return;
    if (isSettled()) return;
    advance({ kind: 'needs-saving' });
    // while the coach has not chosen, what is marked meanwhile is kept beside the file as it would be in it
    if (state().status.kind === 'conflict') keepInJournal();
    waitingSince ??= steady();
    turns.schedule(Math.max(0, Math.min(quiet, waitingSince + longest - steady())));
  });
  if (options.unsavedFromStart) turns.schedule(0);
  const leave = (): void => {
    document.commit();
    if (isSettled()) return;
    keepInJournal();
    void turns.start();
  };
  const closed = savedOnLeaving({ flush: turns.start, leave });

  return {
    status,
    flush: turns.start,
    leave,
    async keepMine() {
      // a write under way says again what they have
      await turns.pause();
      const { status: current, revision } = state();
      if (current.kind !== 'conflict') return;
      // A write on an outdated base is refused and kept beside the file: so their version stays too. It gets a new
      // date, as the very text that is on disk would count as written.
      await options.write(stamped(current.theirs, now), revision);
      advance({ kind: 'mine-chosen' });
      await turns.start();
    },
    takeTheirs() {
      const { status: current } = state();
      if (current.kind !== 'conflict') return;
      leaveMineBeside(options, memory);
      advance({ kind: 'theirs-chosen', writer: makeId() });
      void turns.pause();
      document.replace(current.theirs);
    },
    async close() {
      document.commit();
      if (!isSettled()) keepInJournal();
      await turns.start();
      turns.close();
      unsubscribe();
      closed();
    },
  };
}

const stamped = <T extends Dated>(value: T, now: () => Date): T => ({
  ...value,
  changedAt: now().toISOString(),
});

type SaveMemory<T extends Dated> = ReturnType<typeof createSaveMemory<T>>;

/** The state of the machine, its status for the screen, and its copy in the window's own storage. */
function createSaveMemory<T extends Dated>(options: DocumentAutosaveOptions<T>) {
  const { document, journal, now, unsavedFromStart = false } = options;
  let saving = beginSaving({
    current: document.current(),
    revision: options.revision,
    unsaved: unsavedFromStart,
    writer: makeId(),
    grewFrom: options.grewFrom ?? [],
  });
  const status = createStore<{ readonly status: SaveStatus<T> }>(() => ({ status: saving.status }));
  return {
    status,
    state: () => saving,
    advance(event: SaveEvent<T>): void {
      const before = saving.status;
      saving = afterSaveEvent(saving, event);
      if (saving.status !== before) status.setState({ status: saving.status });
    },
    isSettled: () => isSaved(saving, document.current()),
    hasNothing: () => hasNothingToWrite(saving, document.current()),
    /** False when the window's storage is full or forbidden. */
    keepInJournal(): boolean {
      const kept = journal.keep({
        baseRevision: saving.revision,
        keptAt: now().toISOString(),
        value: document.current(),
        ...saving.lineage,
      });
      // this entry holds what those it grew from did
      if (kept) journal.forget(saving.lineage.grewFrom);
      return kept;
    },
  };
}

/** One write of what is on the screen, and what follows from its answer. */
function createWriteOnce<T extends Dated>(
  options: DocumentAutosaveOptions<T>,
  { state, advance, isSettled, hasNothing, keepInJournal }: SaveMemory<T>,
  schedule: (wait: number) => void,
): () => Promise<void> {
  const { document, journal, now, quiet = 350 } = options;
  /** True where the coach went on with the other version meanwhile. */
  const isOld = (from: Lineage): boolean => from.writer !== state().lineage.writer;

  const afterRefusal = async (value: T, from: Lineage, error: HostError): Promise<void> => {
    const journalled = keepInJournal();
    if (error.code === 'conflict') {
      const read = await options.read();
      if (isOld(from)) return;
      if (read.ok) {
        const { value: theirs, revision: theirRevision } = read.value;
        advance({ kind: 'file-differs', sent: value, theirs, theirRevision });
        if (state().status.kind !== 'conflict') schedule(0);
        else if (!hasNothing()) schedule(quiet);
        return;
      }
    }
    const { failures } = state();
    advance({ kind: 'write-failed', error, journalled });
    schedule(retryAfter[Math.min(failures, retryAfter.length - 1)] ?? 30_000);
  };
  return async () => {
    const value = document.current();
    const from = state().lineage;
    advance({ kind: 'write-began', value });
    const result = await options.write(stamped(value, now), state().revision, from);
    if (isOld(from)) return;
    if (!result.ok) return afterRefusal(value, from, result.error);
    journal.forget([from, ...from.grewFrom]);
    const { revision } = result.value;
    advance({ kind: 'written', value, revision, current: document.current(), at: now() });
    if (!isSettled()) schedule(quiet);
  };
}

/** For a conflict in which theirs was chosen: mine is kept beside the file, or in the window's storage until it is. */
function leaveMineBeside<T extends Dated>(
  { document, journal, write, now }: DocumentAutosaveOptions<T>,
  { state, keepInJournal }: SaveMemory<T>,
): void {
  const mine = document.current();
  const { lineage: from, beside, revision } = state();
  const forget = (): void => journal.forget([from, ...from.grewFrom]);
  if (beside === mine) {
    forget();
    return;
  }
  keepInJournal();
  void write(stamped(mine, now), revision, from).then((answer) => {
    if (answer.ok || answer.error.code === 'conflict') forget();
  });
}
