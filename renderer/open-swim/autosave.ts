import { success } from '#core/host-contract/host-error';
import type { Author } from '#core/host-contract/operations/lineage';
import type { Swim } from '#core/swim-file/swim-schema';
import type { HostClient } from '../host/host-client';
import { createDocumentAutosave, type DocumentAutosave } from '../documents/document-autosave';
import type { SwimDocument } from './swim-document';
import type { SwimJournal } from './swim-journal';

export type Autosave = DocumentAutosave<Swim>;

export interface AutosaveOptions {
  readonly document: SwimDocument;
  readonly host: Pick<HostClient, 'call'>;
  readonly journal: SwimJournal;
  readonly revision: string;
  readonly now: () => Date;
  /** True when what is on screen is newer than the disk from the start (a replayed journal), and whose work it is. */
  readonly unsavedFromStart?: boolean;
  readonly grewFrom?: readonly Author[];
  /** Milliseconds of quiet before a write, and the longest a change may wait. */
  readonly quiet?: number;
  readonly longest?: number;
}

/** Saves a swim by itself, and keeps in the window's own storage what can't be saved. */
export function createAutosave({ document, host, journal, revision, ...rest }: AutosaveOptions): Autosave {
  const { id } = document.swim();
  return createDocumentAutosave<Swim>({
    ...rest,
    revision,
    document: {
      current: document.swim,
      commit: document.commit,
      replace: document.replace,
      subscribe: (changed) =>
        document.store.subscribe((now, before) =>
          changed(now.swim, before.swim, now.inGesture, before.inGesture),
        ),
    },
    // a swim is always on disk before it can be changed
    write: (swim, baseRevision, lineage) =>
      host.call('swim/write', { swim, baseRevision: baseRevision ?? revision, ...(lineage && { lineage }) }),
    read: async () => {
      const read = await host.call('swim/read', { id });
      return read.ok ? success({ value: read.value.swim, revision: read.value.revision }) : read;
    },
    journal: { keep: journal.keep, forget: (authors) => journal.forget(id, authors) },
  });
}
