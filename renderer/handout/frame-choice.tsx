import { useMemo, useState } from 'react';
import { swimmerRooms } from '#core/drawing/swimmer-room';
import type { ExportSource } from '#core/exporting/export-source';
import { type Handout, mostHandoutFrames } from '#core/handout/handout-file';
import { realTimeOf } from '#core/timeline/clip-clock';
import type { Change } from '../documents/step-history';
import { handoutMoments } from './moments';
import { useThumbnails } from './use-thumbnails';

interface Props {
  readonly handout: Handout;
  readonly source: ExportSource;
  readonly count: number;
  readonly change: (name: string, edit: Change<Handout>) => void;
}

const places = ['Large picture', 'Second picture', 'Third picture'];

/** Which moments are shown: pick a place, then its moment by its picture; the arrows step to any other frame. */
export function FrameChoice({ handout, source, count, change }: Props) {
  const { clock } = source;
  const { frames } = handout;
  const moments = useMemo(() => handoutMoments(source), [source]);
  const [chosen, setChosen] = useState(0);
  const shown = Math.min(mostHandoutFrames, frames.length + 1);
  const place = Math.min(chosen, shown - 1);
  const wanted = useMemo(
    () => [...new Set([...frames, ...moments.map(({ frame }) => frame)])],
    [frames, moments],
  );
  const roomOn = useMemo(() => swimmerRooms(source.lines), [source]);
  const pictures = useThumbnails(wanted, roomOn);
  const put = (at: number, frame: number | null): void =>
    change(frame === null ? 'a picture left out' : 'a picture', (draft) => {
      if (frame === null) draft.frames.splice(at, 1);
      else draft.frames[at] = Math.max(0, Math.min(count - 1, frame));
    });
  const thumbnail = (frame: number | undefined) => {
    const address = frame === undefined ? undefined : pictures.get(frame);
    return address ? <img src={address} alt="" /> : <span className="handout-no-picture" />;
  };
  return (
    <fieldset className="handout-pictures">
      <legend>Pictures</legend>
      {places.slice(0, shown).map((label, at) => {
        const frame = frames[at];
        const named = moments.find((each) => each.frame === frame);
        const words =
          frame === undefined
            ? 'none'
            : `${named?.words ?? `Frame ${frame + 1}`} · ${realTimeOf(clock, frame).toFixed(2)} s`;
        return (
          <div className="handout-frame" key={label}>
            <button
              type="button"
              className="handout-place"
              aria-pressed={at === place}
              onClick={() => setChosen(at)}
              title={`Choose the moment of the ${label.toLowerCase()} below`}
            >
              {thumbnail(frame)}
              <span>
                <b>{label}</b>
                <small>{words}</small>
              </span>
            </button>
            {frame !== undefined && (
              <>
                <button
                  type="button"
                  aria-label={`${label}: one frame back`}
                  title="One frame back"
                  disabled={frame === 0}
                  onClick={() => put(at, frame - 1)}
                >
                  ‹
                </button>
                <button
                  type="button"
                  aria-label={`${label}: one frame on`}
                  title="One frame on"
                  disabled={frame === count - 1}
                  onClick={() => put(at, frame + 1)}
                >
                  ›
                </button>
                <button
                  type="button"
                  aria-label={`${label}: leave it out`}
                  title="Leave this picture out"
                  onClick={() => put(at, null)}
                >
                  ×
                </button>
              </>
            )}
          </div>
        );
      })}
      {moments.length > 0 && (
        <>
          <p className="handout-hint">Moments for the {(places[place] ?? '').toLowerCase()}:</p>
          <ul className="handout-moments" aria-label="Moments">
            {moments.map(({ frame, words, time }) => (
              <li key={frame}>
                <button
                  type="button"
                  aria-pressed={frames[place] === frame}
                  onClick={() => put(place, frame)}
                  title={`${words}, frame ${frame + 1}`}
                >
                  {thumbnail(frame)}
                  <span>{words}</span>
                  <small>{time}</small>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </fieldset>
  );
}
