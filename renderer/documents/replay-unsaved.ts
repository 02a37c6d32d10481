import type { Result } from '#core/host-contract/host-error';
import {
  type Author,
  holds,
  type Lineage,
  mostAncestors,
  superseded,
} from '#core/host-contract/operations/lineage';
import { sayTheSame } from './same-marks';
import type { UnsavedEntry, UnsavedJournal } from './unsaved-journal';

/** A document as it opens. */
export interface Opened<T> {
  readonly value: T | null;
  readonly revision: string | null;
  /** Whose work the file is known to hold. */
  readonly written: readonly Author[];
}

/** What goes on screen, and what it grew from. */
export interface Replayed<T> {
  readonly value: T | null;
  readonly revision: string | null;
  readonly grewFrom: readonly Author[];
  /** Changes from last time that never reached the disk are in the value and wait to be written. */
  readonly replayed: boolean;
}

const lineageOf = ({ writer, step, grewFrom }: UnsavedEntry<unknown>): Lineage => ({
  writer,
  step,
  grewFrom: [...grewFrom],
});

/**
 * Lays what the journal kept of a document over what was read from disk. Entries whose work the file holds are dropped:
 * a journal can be older than the file, as a killed browser forgets what it had told its storage last. When several
 * windows left something, the one kept last goes on screen; the others are handed to the host, which writes or keeps them.
 */
export async function replayUnsaved<T extends { readonly changedAt: string }>(
  journal: UnsavedJournal<T>,
  id: string,
  opened: Opened<T>,
  write: (value: T, baseRevision: string | null, lineage: Lineage) => Promise<Result<unknown>>,
): Promise<Replayed<T>> {
  const { value, revision, written } = opened;
  const all = journal.read(id);
  const left = all.filter(
    (entry) =>
      !superseded(written, entry) &&
      !(value !== null && sayTheSame(entry.value, value)) &&
      !all.some((other) => other.writer !== entry.writer && holds(lineageOf(other), entry)),
  );
  const dropped = all.filter((entry) => !left.includes(entry));
  const last = left.at(-1);
  for (const other of left.slice(0, -1)) {
    const answer = await write(other.value, other.baseRevision, lineageOf(other));
    // refused as a conflict, it lies beside the file
    if (answer.ok || answer.error.code === 'conflict') dropped.push(other);
  }
  journal.forget(id, dropped);
  if (!last) return { value, revision, grewFrom: [], replayed: false };
  const { writer, step, grewFrom } = last;
  return {
    value: last.value,
    revision: last.baseRevision,
    grewFrom: [{ writer, step }, ...grewFrom].slice(0, mostAncestors),
    replayed: true,
  };
}
