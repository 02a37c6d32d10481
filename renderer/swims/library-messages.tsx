import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { Library } from './use-library';
import { swimsWords } from '#core/words/swims';

interface TroubleProps {
  readonly trouble: HostError;
  readonly onAgain: () => void;
}

/** Why the library can't be read, and what to do. */
export function LibraryTrouble({ trouble, onAgain }: TroubleProps) {
  const { what, todo } = errorWords(trouble);
  return (
    <div className="message message-trouble" role="alert">
      <h2>{what}</h2>
      <p>{todo}</p>
      <button type="button" onClick={onAgain}>
        {swimsWords('tryAgain')}
      </button>
    </div>
  );
}

/** Swims that can't be shown: each says what happened, and where it lies, so that nothing seems lost. */
export function LibraryProblems({ problems }: { readonly problems: Library['problems'] }) {
  if (problems.length === 0) return null;
  return (
    <section className="message message-trouble" aria-label={swimsWords('swimsCantShown')}>
      <ul className="library-problems">
        {problems.map((problem) => {
          const { what, todo } = errorWords({
            code: problem.code,
            detail: { ...problem.detail, name: problem.folder },
          });
          return (
            <li key={problem.folder}>
              <strong>{problem.folder}</strong>: {what} {todo}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
