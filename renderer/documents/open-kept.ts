import type { z } from 'zod';
import { type Result, success } from '#core/host-contract/host-error';
import type { Author, Lineage } from '#core/host-contract/operations/lineage';
import type { HostClient } from '../host/host-client';
import { createDocumentAutosave, type DocumentAutosave } from './document-autosave';
import { createKeptDocument, type KeptDocument } from './kept-document';
import { replayUnsaved } from './replay-unsaved';
import { createUnsavedJournal, type ListedText } from './unsaved-journal';

type Host = Pick<HostClient, 'call'>;

/** How one kind of document is read and written through the host. */
export interface KeptKind<T> {
  /** Names its unsaved changes in the window's storage. */
  readonly prefix: string;
  readonly schema: z.ZodType<T>;
  read(
    host: Host,
    id: string,
  ): Promise<Result<{ readonly value: T; readonly revision: string; readonly written: readonly Author[] }>>;
  write(
    host: Host,
    value: T,
    baseRevision: string | null,
    lineage?: Lineage,
  ): Promise<Result<{ readonly revision: string }>>;
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
  storage: ListedText,
  id: string,
  now: () => Date,
): Promise<Result<OpenKept<T>>> {
  const read = await kind.read(host, id);
  if (!read.ok) return read;
  const journal = createUnsavedJournal(storage, kind.prefix, kind.schema, (value) => value.id);
  const write = (value: T, base: string | null, lineage?: Lineage) => kind.write(host, value, base, lineage);
  const { value, replayed, ...from } = await replayUnsaved(journal, id, read.value, write);
  const document = createKeptDocument(value ?? read.value.value);
  const autosave = createDocumentAutosave<T>({
    document: {
      ...document,
      subscribe: (changed) =>
        document.store.subscribe((state, before) =>
          changed(state.value, before.value, state.inGesture, before.inGesture),
        ),
    },
    write,
    read: () => kind.read(host, id),
    journal: { keep: journal.keep, forget: (authors) => journal.forget(id, authors) },
    ...from,
    unsavedFromStart: replayed,
    now,
  });
  return success({ document, autosave, replayed, close: autosave.close });
}
