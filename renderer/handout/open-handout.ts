import { z } from 'zod';
import { type Handout, handoutSchema } from '#core/handout/handout-file';
import { type Result, success } from '#core/host-contract/host-error';
import type { HostClient } from '../host/host-client';
import { createDocumentAutosave, type DocumentAutosave } from '../state/document-autosave';
import { createKeptDocument, type KeptDocument } from '../state/kept-document';
import { createKeyedJournal } from '../state/keyed-journal';

/** A handout on screen: its choices can be undone and are saved beside the swim by themselves. */
export interface OpenHandout {
  readonly document: KeptDocument<Handout>;
  readonly autosave: DocumentAutosave<Handout>;
  close(): Promise<void>;
}

const entrySchema = z.strictObject({
  baseRevision: z.string().nullable(),
  keptAt: z.string(),
  value: handoutSchema,
});

/** Opens what was chosen for a swim; `first` gives the choices when nobody has chosen yet. */
export async function openHandout(
  host: Pick<HostClient, 'call'>,
  swimId: string,
  first: () => Handout,
): Promise<Result<OpenHandout>> {
  const read = await host.call('handout/read', { swimId });
  if (!read.ok) return read;
  const journal = createKeyedJournal(
    window.localStorage,
    'submark-handout:',
    entrySchema,
    (entry) => entry.value.swimId,
  );
  const unsaved = journal.read(swimId);
  const document = createKeptDocument<Handout>(unsaved?.value ?? read.value.handout ?? first());
  const autosave = createDocumentAutosave<Handout>({
    document: {
      current: document.current,
      commit: document.commit,
      replace: document.replace,
      subscribe: (changed) =>
        document.store.subscribe((state, before) =>
          changed(state.value, before.value, state.inGesture, before.inGesture),
        ),
    },
    write: (handout, baseRevision) => host.call('handout/write', { handout, baseRevision }),
    async read() {
      const again = await host.call('handout/read', { swimId });
      if (!again.ok) return again;
      const { handout, revision } = again.value;
      return handout === null || revision === null
        ? success({ value: document.current(), revision: '' })
        : success({ value: handout, revision });
    },
    journal: { keep: (entry) => journal.keep(entry), forget: () => journal.forget(swimId) },
    revision: unsaved ? unsaved.baseRevision : read.value.revision,
    unsavedFromStart: unsaved !== null,
    now: () => new Date(),
  });
  return success({ document, autosave, close: () => autosave.close() });
}
