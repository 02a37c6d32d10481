import { useMemo, useState } from 'react';
import { swimmerWindows } from '#core/drawing/swimmer-windows';
import type { ExportSource } from '#core/exporting/export-source';
import { type Handout, mostHandoutFrames } from '#core/handout/handout-file';
import { realTimeOf } from '#core/timeline/clip-clock';
import type { Change } from '../documents/step-history';
import { handoutMoments } from './moments';
import { useThumbnails } from './use-thumbnails';
import { handoutWords } from '#core/words/handout';

interface Props {
  readonly handout: Handout;
  readonly source: ExportSource;
  readonly count: number;
  readonly change: (name: string, edit: Change<Handout>) => void;
}

const places = [handoutWords('largePicture'), handoutWords('secondPicture'), handoutWords('thirdPicture')];

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
  const roomOn = useMemo(() => swimmerWindows(source.swim).roomOn, [source]);
  const pictures = useThumbnails(wanted, roomOn);
  const put = (at: number, frame: number | null): void =>
    change(frame === null ? handoutWords('pictureLeftOut') : handoutWords('picture'), (draft) => {
      if (frame === null) draft.frames.splice(at, 1);
      else draft.frames[at] = Math.max(0, Math.min(count - 1, frame));
    });
  const thumbnail = (frame: number | undefined) => {
    const address = frame === undefined ? undefined : pictures.get(frame);
    return address ? <img src={address} alt="" /> : <span className="handout-no-picture" />;
  };
  return (
    <fieldset className="handout-pictures">
      <legend>{handoutWords('pictures')}</legend>
      {places.slice(0, shown).map((label, at) => {
        const frame = frames[at];
        const named = moments.find((each) => each.frame === frame);
        const words =
          frame === undefined
            ? 'none'
            : `${named?.words ?? handoutWords('frame', { frame: frame + 1 })} · ${realTimeOf(clock, frame).toFixed(2)} s`;
        return (
          <div className="handout-frame" key={label}>
            <button
              type="button"
              className="handout-place"
              aria-pressed={at === place}
              onClick={() => setChosen(at)}
              title={handoutWords('chooseMomentBelow', { label: label.toLowerCase() })}
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
                  aria-label={handoutWords('oneFrameBack', { label })}
                  title={handoutWords('oneFrameBack2')}
                  disabled={frame === 0}
                  onClick={() => put(at, frame - 1)}
                >
                  ‹
                </button>
                <button
                  type="button"
                  aria-label={handoutWords('oneFrame', { label })}
                  title={handoutWords('oneFrame2')}
                  disabled={frame === count - 1}
                  onClick={() => put(at, frame + 1)}
                >
                  ›
                </button>
                <button
                  type="button"
                  aria-label={handoutWords('leaveOut', { label })}
                  title={handoutWords('leavePictureOut')}
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
          <p className="handout-hint">
            {handoutWords('moments', { places: (places[place] ?? '').toLowerCase() })}
          </p>
          <ul className="handout-moments" aria-label={handoutWords('moments2')}>
            {moments.map(({ frame, words, time }) => (
              <li key={frame}>
                <button
                  type="button"
                  aria-pressed={frames[place] === frame}
                  onClick={() => put(place, frame)}
                  title={handoutWords('frameWords', { words, frame: frame + 1 })}
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
