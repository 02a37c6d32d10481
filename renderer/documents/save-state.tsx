import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import type { DocumentAutosave } from './document-autosave';
import './save-state.css';

interface Props<T> {
  readonly autosave: DocumentAutosave<T>;
  /** What is saved, as in "This swim was changed elsewhere". */
  readonly what: string;
}

/** Whether a document's changes are safe, always in sight; trouble comes with what to do. */
export function SaveState<T>({ autosave, what }: Props<T>) {
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
            {!status.journalled && ' Leave this window open until it works: it holds the only copy.'}
          </span>
          <button type="button" onClick={() => void autosave.flush()}>
            Try again
          </button>
        </div>
      );
    case 'conflict':
      return (
        <div className="save-state trouble" role="alert" data-save="conflict">
          <span>
            This {what} was changed elsewhere meanwhile. Both versions are kept beside each other: go on with
          </span>
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
