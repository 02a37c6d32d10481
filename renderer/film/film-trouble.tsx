import { useState } from 'react';
import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import { barePath, PlaceField } from '../ui/place-field';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { filmWords } from '#core/words/film';

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
      ? filmWords('clipNotWhere', { originalName: clip.originalName })
      : trouble.kind === 'changed'
        ? filmWords('clipNotFilmThese', { originalName: clip.originalName })
        : trouble.words;
  const relink = async (): Promise<void> => {
    setAsking(true);
    await session.autosave.flush();
    const result = await session.host.call('swim/relink', { id, path: barePath(path) });
    setAsking(false);
    if (result.ok) onRelinked();
    else {
      const { what, todo } = errorWords(result.error);
      setAnswer(filmWords('notLinked', { what, todo }));
    }
  };
  return (
    <div className="film-trouble" role="alert">
      <h2>{filmWords('noPicture')}</h2>
      <p>{said}</p>
      {canReturn && trouble.waiting && <p>{filmWords('hereMomentAgo')}</p>}
      <p>{filmWords('marksReadingsScore')}</p>
      {trouble.kind === 'no-copy' && (
        <button type="button" onClick={() => void session.keeper.makeCopy('needed')}>
          {filmWords('makeWorkingCopy2')}
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
            label={filmWords('whereNow')}
            wanted="film"
            placeholder={clip.place.kind === 'outside' ? clip.place.path : clip.originalName}
            value={path}
            onChange={setPath}
          />
          <button type="submit" disabled={path.trim() === '' || asking}>
            {asking ? filmWords('looking') : filmWords('link')}
          </button>
        </form>
      )}
      {answer && <p className="answer">{answer}</p>}
    </div>
  );
}
