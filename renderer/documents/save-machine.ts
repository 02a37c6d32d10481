import type { HostError } from '#core/host-contract/host-error';
import type { Author, Lineage } from '#core/host-contract/operations/lineage';
import { sayTheSame } from './same-marks';

/** A document that says when it was last saved. */
export interface Dated {
  readonly changedAt: string;
}

export type SaveStatus<T> =
  | { readonly kind: 'saved'; readonly at: Date | null }
  | { readonly kind: 'unsaved' }
  | { readonly kind: 'saving' }
  /** The changes are in memory and, when `journalled`, in the window's own storage too. */
  | { readonly kind: 'failed'; readonly error: HostError; readonly journalled: boolean }
  /** The file on disk was changed by someone else; both versions exist until the coach chooses. */
  | { readonly kind: 'conflict'; readonly theirs: T; readonly theirRevision: string };

/** Everything saving knows of a document, apart from what is on the screen. */
export interface Saving<T> {
  readonly status: SaveStatus<T>;
  /** What the file is known to be; null: not there yet. */
  readonly revision: string | null;
  /** The value the file holds; null when it holds none that was on this screen. */
  readonly saved: T | null;
  /** What the host was last sent while the coach has not yet chosen; the host keeps it beside the file. */
  readonly beside: T | null;
  /** What this window has sent or found unsent: a file that says the same is our own, whenever it landed. */
  readonly sent: readonly T[];
  /** Writes that failed in a row. */
  readonly failures: number;
  /** This window's work on the document: its name, how many changes it has come to, and what it grew from. */
  readonly lineage: Lineage;
}

export type SaveEvent<T> =
  /** The value on the screen is another one, perhaps in the middle of a drag. */
  | { readonly kind: 'changed' }
  /** A change is whole and differs from what the file holds. */
  | { readonly kind: 'needs-saving' }
  | { readonly kind: 'write-began'; readonly value: T }
  /** `current`: what is on the screen by now. */
  | {
      readonly kind: 'written';
      readonly value: T;
      readonly revision: string;
      readonly current: T;
      readonly at: Date;
    }
  | { readonly kind: 'write-failed'; readonly error: HostError; readonly journalled: boolean }
  /** The file is another one than the write was based on, and this is what it holds. */
  | { readonly kind: 'file-differs'; readonly sent: T; readonly theirs: T; readonly theirRevision: string }
  | { readonly kind: 'mine-chosen' }
  /** `writer`: the name of the work that begins now. */
  | { readonly kind: 'theirs-chosen'; readonly writer: string };

/** How many values sent are remembered, beside the one being written. Our default. */
const sentKept = 3;

export function beginSaving<T>(start: {
  readonly current: T;
  readonly revision: string | null;
  readonly unsaved: boolean;
  readonly writer: string;
  readonly grewFrom: readonly Author[];
}): Saving<T> {
  const { current, revision, unsaved, writer, grewFrom } = start;
  return {
    status: unsaved ? { kind: 'unsaved' } : { kind: 'saved', at: null },
    revision,
    saved: unsaved ? null : current,
    beside: null,
    sent: unsaved ? [current] : [],
    failures: 0,
    lineage: { writer, step: 0, grewFrom: [...grewFrom] },
  };
}

/** Whether the file holds what is on the screen. */
export const isSaved = <T>(saving: Saving<T>, current: T): boolean => saving.saved === current;

/** Whether a write would bring nothing new to the disk, neither into the file nor beside it. */
export const hasNothingToWrite = <T>(saving: Saving<T>, current: T): boolean =>
  isSaved(saving, current) || (saving.status.kind === 'conflict' && saving.beside === current);

/** The state after an event. Events that mean nothing in a state leave it as it is. */
export function afterSaveEvent<T extends Dated>(saving: Saving<T>, event: SaveEvent<T>): Saving<T> {
  const { status, lineage } = saving;
  switch (event.kind) {
    case 'changed':
      return { ...saving, lineage: { ...lineage, step: lineage.step + 1 } };
    case 'needs-saving':
      // a failed save and a conflict stay on the screen until they are solved
      return status.kind === 'failed' || status.kind === 'conflict'
        ? saving
        : { ...saving, status: { kind: 'unsaved' } };
    case 'write-began':
      return {
        ...saving,
        status: status.kind === 'conflict' ? status : { kind: 'saving' },
        sent: [...saving.sent.slice(-sentKept), event.value],
      };
    case 'written':
      return {
        ...saving,
        status: event.value === event.current ? { kind: 'saved', at: event.at } : { kind: 'unsaved' },
        revision: event.revision,
        saved: event.value,
        beside: null,
        sent: [],
        failures: 0,
      };
    case 'write-failed': {
      const { error, journalled } = event;
      return {
        ...saving,
        status: status.kind === 'conflict' ? status : { kind: 'failed', error, journalled },
        failures: saving.failures + 1,
      };
    }
    case 'file-differs':
      return withTheirs(saving, event);
    case 'mine-chosen':
      // the next write is based on theirs, which the host keeps beside the file
      return status.kind === 'conflict'
        ? { ...saving, status: { kind: 'unsaved' }, revision: status.theirRevision, saved: null }
        : saving;
    case 'theirs-chosen':
      return status.kind === 'conflict'
        ? {
            ...saving,
            status: { kind: 'saved', at: null },
            revision: status.theirRevision,
            saved: status.theirs,
            beside: null,
            // what comes now is other work: it must not write over mine, which is kept beside the file
            lineage: { writer: event.writer, step: 0, grewFrom: [] },
          }
        : saving;
  }
}

function withTheirs<T extends Dated>(
  saving: Saving<T>,
  { sent, theirs, theirRevision }: Extract<SaveEvent<T>, { readonly kind: 'file-differs' }>,
): Saving<T> {
  const ours = saving.sent.some((each) => sayTheSame(each, theirs));
  return ours
    ? { ...saving, status: { kind: 'unsaved' }, revision: theirRevision }
    : { ...saving, status: { kind: 'conflict', theirs, theirRevision }, beside: sent };
}
