import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { KeptProblem } from '#core/host-contract/operations/kept-problem';
import { documentsWords } from '#core/words/documents';

/** Files that can't be opened as they are: each says what happened, so that nothing seems lost. */
export function KeptProblems({ problems }: { readonly problems: readonly KeptProblem[] }) {
  return problems.map(({ name, code, detail }) => {
    const { what, todo } = errorWords({ code, detail: { ...detail, name } });
    return (
      <p key={name} className="message message-trouble">
        {what} {todo}
      </p>
    );
  });
}

interface TroubleProps {
  readonly error: HostError;
  readonly onAgain: () => void;
  /** Where to go instead, and its name. */
  readonly onLeave: () => void;
  readonly leaveWords: string;
}

/** In place of a document that could not be opened: why, and what to do. */
export function KeptTrouble({ error, onAgain, onLeave, leaveWords }: TroubleProps) {
  const { what, todo } = errorWords(error);
  return (
    <main className="sets-failed">
      <div className="message message-trouble" role="alert">
        <h1>{what}</h1>
        <p>{todo}</p>
        <div className="dialog-foot">
          <button type="button" onClick={onAgain}>
            {documentsWords('tryAgain')}
          </button>
          <button type="button" onClick={onLeave}>
            {leaveWords}
          </button>
        </div>
      </div>
    </main>
  );
}
