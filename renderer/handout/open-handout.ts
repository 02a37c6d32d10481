import { type Handout, handoutSchema } from '#core/handout/handout-file';
import { type Result, success } from '#core/host-contract/host-error';
import type { Lineage } from '#core/host-contract/operations/lineage';
import type { HostClient } from '../host/host-client';
import { createDocumentAutosave, type DocumentAutosave } from '../documents/document-autosave';
import { createKeptDocument, type KeptDocument } from '../documents/kept-document';
import { replayUnsaved } from '../documents/replay-unsaved';
import { createUnsavedJournal } from '../documents/unsaved-journal';
import { handoutWords } from '#core/words/handout';

/** A handout on screen: its choices can be undone and are saved beside the swim by themselves. */
export interface OpenHandout {
  readonly document: KeptDocument<Handout>;
  readonly autosave: DocumentAutosave<Handout>;
  close(): Promise<void>;
}

/** Opens what was chosen for a swim; `first` gives the choices when nobody has chosen yet. */
export async function openHandout(
  host: Pick<HostClient, 'call'>,
  swimId: string,
  first: () => Handout,
): Promise<Result<OpenHandout>> {
  const read = await host.call('handout/read', { swimId });
  if (!read.ok) return read;
  const journal = createUnsavedJournal(
    window.localStorage,
    handoutWords('submarkHandout'),
    handoutSchema,
    (handout) => handout.swimId,
  );
  const write = (handout: Handout, baseRevision: string | null, lineage?: Lineage) =>
    host.call('handout/write', { handout, baseRevision, ...(lineage && { lineage }) });
  const opened = { ...read.value, value: read.value.handout };
  const { value, replayed, ...from } = await replayUnsaved(journal, swimId, opened, write);
  const document = createKeptDocument<Handout>(value ?? first());
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
    write,
    async read() {
      const again = await host.call('handout/read', { swimId });
      if (!again.ok) return again;
      const { handout, revision } = again.value;
      return handout === null || revision === null
        ? success({ value: document.current(), revision: '' })
        : success({ value: handout, revision });
    },
    journal: { keep: journal.keep, forget: (authors) => journal.forget(swimId, authors) },
    ...from,
    unsavedFromStart: replayed,
    now: () => new Date(),
  });
  return success({ document, autosave, close: () => autosave.close() });
}
