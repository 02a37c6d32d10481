import { useState } from 'react';
import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import { barePath, PlaceField } from '../ui/place-field';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';

/** Why there is no picture, and the way back to it. Marks and readings stay as they are meanwhile. */
export function FilmTroubleCard({ onRelinked }: { readonly onRelinked: () => void }) {
  const session = useOpenSwim();
  const trouble = useStore(session.film, (state) => state.trouble);
  const clip = useSwim((swim) => swim.clip);
  const id = useSwim((swim) => swim.id);
  const [path, setPath] = useState('');
  const [answer, setAnswer] = useState<string | null>(null);
  const [asking, setAsking] = useState(false);
  if (!trouble) return null;
  const canReturn = trouble.kind === 'missing' || trouble.kind === 'changed';
  const said =
    trouble.kind === 'missing'
      ? `The clip “${clip.originalName}” is not where it was.`
      : trouble.kind === 'changed'
        ? `The clip “${clip.originalName}” is not the film these marks were made on, so it is not shown under them.`
        : trouble.words;
  const relink = async (): Promise<void> => {
    setAsking(true);
    await session.autosave.flush();
    const result = await session.host.call('swim/relink', { id, path: barePath(path) });
    setAsking(false);
    if (result.ok) onRelinked();
    else {
      const { what, todo } = errorWords(result.error);
      setAnswer(`Not linked. ${what} ${todo}`);
    }
  };
  return (
    <div className="film-trouble" role="alert">
      <h2>No picture</h2>
      <p>{said}</p>
      {canReturn && trouble.waiting && (
        <p>
          It was here a moment ago. Connect its disk again or put the file back, and the picture returns by
          itself, on the same frame.
        </p>
      )}
      <p>Marks, readings and the score are all here.</p>
      {trouble.kind === 'no-copy' && (
        <button type="button" onClick={() => void session.keeper.makeCopy('needed')}>
          Make the working copy
        </button>
      )}
      {canReturn && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void relink();
          }}
          onKeyDown={(event) => event.stopPropagation()}
        >
          <PlaceField
            host={session.host}
            label="Where is it now?"
            wanted="film"
            placeholder={clip.place.kind === 'outside' ? clip.place.path : clip.originalName}
            value={path}
            onChange={setPath}
          />
          <button type="submit" disabled={path.trim() === '' || asking}>
            {asking ? 'Looking…' : 'Link it'}
          </button>
        </form>
      )}
      {answer && <p className="answer">{answer}</p>}
    </div>
  );
}
