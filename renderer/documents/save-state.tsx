import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import type { DocumentAutosave } from './document-autosave';
import './save-state.css';
import { documentsWords } from '#core/words/documents';

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
          {status.at
            ? documentsWords('saved', {
                at: status.at.toLocaleTimeString(undefined, { timeStyle: 'medium' }),
              })
            : documentsWords('saved2')}
        </output>
      );
    case 'unsaved':
    case 'saving':
      return (
        <output className="save-state" data-save={status.kind}>
          {documentsWords('saving')}
        </output>
      );
    case 'failed':
      return (
        <div className="save-state trouble" role="alert" data-save="failed">
          <span>
            {documentsWords('notSaved', {
              what: errorWords(status.error).what,
              todo: errorWords(status.error).todo,
            })}
            {!status.journalled && ` ${documentsWords('leaveWindowOpen')}`}
          </span>
          <button type="button" onClick={() => void autosave.flush()}>
            {documentsWords('tryAgain')}
          </button>
        </div>
      );
    case 'conflict':
      return (
        <div className="save-state trouble" role="alert" data-save="conflict">
          <span>{documentsWords('changedElsewhereMeanwhile', { what })}</span>
          <button type="button" onClick={() => void autosave.keepMine()}>
            {documentsWords('one')}
          </button>
          <button type="button" onClick={() => autosave.takeTheirs()}>
            {documentsWords('other')}
          </button>
        </div>
      );
  }
}
