import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import { uiWords } from '#core/words/ui';

interface Props {
  readonly error: HostError;
  /** Tries again; left out where that can't help. */
  readonly onAgain?: () => void;
  readonly onShelf: () => void;
}

/** What stands in place of a screen whose swim could not be opened: what happened, what to do, and the ways on. */
export function OpeningFailed({ error, onAgain, onShelf }: Props) {
  const { what, todo } = errorWords(error);
  return (
    <div className="bench-failed" role="alert">
      <h1>{what}</h1>
      <p>{todo}</p>
      {onAgain && (
        <button type="button" onClick={onAgain}>
          {uiWords('tryAgain')}
        </button>
      )}
      <button type="button" onClick={onShelf}>
        {uiWords('backShelf')}
      </button>
    </div>
  );
}
