import { useStore } from 'zustand';
import type { Handout } from '#core/handout/handout-file';
import { errorWords } from '#core/host-contract/error-words';
import type { DocumentAutosave } from '../state/document-autosave';

/** Whether the choices are safe beside the swim. */
export function HandoutSaveState({ autosave }: { readonly autosave: DocumentAutosave<Handout> }) {
  const status = useStore(autosave.status, (state) => state.status);
  switch (status.kind) {
    case 'saved':
      return (
        <output className="save-state" data-save="saved">
          {status.at ? `Saved ${status.at.toLocaleTimeString(undefined, { timeStyle: 'medium' })}` : 'Saved'}
        </output>
      );
    case 'unsaved':
    case 'saving':
      return (
        <output className="save-state" data-save={status.kind}>
          Saving…
        </output>
      );
    case 'failed':
      return (
        <div className="save-state trouble" role="alert" data-save="failed">
          <span>
            Not saved. {errorWords(status.error).what} {errorWords(status.error).todo}
          </span>
          <button type="button" onClick={() => void autosave.flush()}>
            Try again
          </button>
        </div>
      );
    case 'conflict':
      return (
        <div className="save-state trouble" role="alert" data-save="conflict">
          <span>This handout was changed elsewhere meanwhile. Both are kept: go on with</span>
          <button type="button" onClick={() => void autosave.keepMine()}>
            this one
          </button>
          <button type="button" onClick={() => autosave.takeTheirs()}>
            the other
          </button>
        </div>
      );
  }
}
