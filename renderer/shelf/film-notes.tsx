import type { ClipFacts } from '../video/frame-source';
import { codecWords } from '#core/timeline/codec-words';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly facts: ClipFacts;
  readonly onTrack: (track: number) => void;
}

/** What the coach should know of this film before it is added: fields, a copy to be made, which of two films it is. */
export function FilmNotes({ facts, onTrack }: Props) {
  const needsCopy = !facts.decodable || facts.fields;
  return (
    <>
      {facts.tracks.length > 1 && (
        <label className="film-track">
          {shelfWords('fileHoldsFilms', { tracks: facts.tracks.length })}
          <select value={facts.track} onChange={(event) => onTrack(Number(event.target.value))}>
            {facts.tracks.map(({ number, codec, width, height }) => (
              <option key={number} value={number}>
                {number}: {width} × {height}, {codecWords(codec)}
              </option>
            ))}
          </select>
        </label>
      )}
      {facts.fields && (
        <p className="caution">
          {shelfWords('interlacedFilmEvery', {
            rate: Math.round(facts.rate),
            rate2: Math.round(facts.rate / 2),
          })}
        </p>
      )}
      {facts.slowedInPart && <p className="caution">{shelfWords('filmSlowedOnly')}</p>}
      {needsCopy && (
        <p className="caution">
          {shelfWords('windowCantStep', { codec: codecWords(facts.codec), container: facts.container })}
        </p>
      )}
    </>
  );
}
