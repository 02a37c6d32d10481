import { z } from 'zod';
import { type Result, success } from '#core/host-contract/host-error';
import type { HostClient } from '../host/host-client';
import { createDocumentAutosave, type DocumentAutosave } from './document-autosave';
import { createKeptDocument, type KeptDocument } from './kept-document';
import { createKeyedJournal, type KeyedText } from './keyed-journal';
import { sayTheSame } from './same-marks';

type Host = Pick<HostClient, 'call'>;

/** How one kind of document is read and written through the host. */
export interface KeptKind<T> {
  /** Names its unsaved changes in the window's storage. */
  readonly prefix: string;
  readonly schema: z.ZodType<T>;
  read(host: Host, id: string): Promise<Result<{ readonly value: T; readonly revision: string }>>;
  write(host: Host, value: T, baseRevision: string | null): Promise<Result<{ readonly revision: string }>>;
}

export interface OpenKept<T> {
  readonly document: KeptDocument<T>;
  readonly autosave: DocumentAutosave<T>;
  /** Changes of last time that had not reached the disk are on screen and wait to be written. */
  readonly replayed: boolean;
  /** Writes what is unsaved and lets go. */
  close(): Promise<void>;
}

/** Opens a document of the library for changing, with what the journal kept of it on top; nothing is dropped silently. */
export async function openKept<T extends { readonly id: string; readonly changedAt: string }>(
  kind: KeptKind<T>,
  host: Host,
  storage: KeyedText,
  id: string,
  now: () => Date,
): Promise<Result<OpenKept<T>>> {
  const read = await kind.read(host, id);
  if (!read.ok) return read;
  const journal = createKeyedJournal(
    storage,
    kind.prefix,
    z.strictObject({ baseRevision: z.string().nullable(), keptAt: z.iso.datetime(), value: kind.schema }),
    (entry) => entry.value.id,
  );
  const kept = journal.read(id);
  const replayed = kept !== null && !sayTheSame(kept.value, read.value.value);
  if (kept && !replayed) journal.forget(id);
  const document = createKeptDocument(replayed ? kept.value : read.value.value);
  const autosave = createDocumentAutosave<T>({
    document: {
      ...document,
      subscribe: (changed) =>
        document.store.subscribe((state, before) =>
          changed(state.value, before.value, state.inGesture, before.inGesture),
        ),
    },
    write: (value, baseRevision) => kind.write(host, value, baseRevision),
    read: () => kind.read(host, id),
    journal: { keep: journal.keep, forget: () => journal.forget(id) },
    revision: replayed ? kept.baseRevision : read.value.revision,
    unsavedFromStart: replayed,
    now,
  });
  return success({ document, autosave, replayed, close: autosave.close });
}
