import type { ClipFacts } from '../video/frame-source';
import { codecWords } from '#core/timeline/codec-words';

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
          This file holds {facts.tracks.length} films
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
          Interlaced film: every picture holds two moments. Submark shows each as a frame of its own, so this
          film has {Math.round(facts.rate)} frames a second instead of {Math.round(facts.rate / 2)}.
        </p>
      )}
      {facts.slowedInPart && (
        <p className="caution">
          This film is slowed only in part, says the phone that filmed it. Submark counts the whole of it at
          one rate: answer for the stretch you measure, and mark only there.
        </p>
      )}
      {needsCopy && (
        <p className="caution">
          This window can’t step through {codecWords(facts.codec)} in {facts.container} by itself: once it is
          added, Submark makes a working copy for that. Your marks belong to the original’s frames, and the
          original stays as it is.
        </p>
      )}
    </>
  );
}
