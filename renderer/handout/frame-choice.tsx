import { useMemo } from 'react';
import type { ExportSource } from '#core/exporting/export-source';
import { type Handout, mostHandoutFrames } from '#core/handout/handout-file';
import { markPhrase } from '#core/marks/mark-words';
import { realTimeOf } from '#core/timeline/clip-clock';
import type { Change } from '../state/step-history';

interface Props {
  readonly handout: Handout;
  readonly source: ExportSource;
  readonly count: number;
  readonly change: (name: string, edit: Change<Handout>) => void;
}

const places = ['Large picture', 'Second picture', 'Third picture'];
const none = '';

/** Which moments are shown: frames that carry a mark are named; any other can be stepped to. */
export function FrameChoice({ handout, source, count, change }: Props) {
  const { swim, clock, lines } = source;
  const named = useMemo(() => {
    const frames = new Set([...swim.events.map((mark) => mark.frame), ...lines.keys()]);
    return [...frames]
      .sort((a, b) => a - b)
      .map((frame) => {
        const events = swim.events.filter((mark) => mark.frame === frame).map(markPhrase);
        const what = [...events, ...(lines.has(frame) ? ['body line'] : [])].join(', ');
        return { frame, words: `${frame + 1} · ${realTimeOf(clock, frame).toFixed(2)} s · ${what}` };
      });
  }, [swim, clock, lines]);
  const put = (place: number, frame: number | null): void =>
    change(frame === null ? 'a picture left out' : 'a picture', (draft) => {
      if (frame === null) draft.frames.splice(place, 1);
      else draft.frames[place] = Math.max(0, Math.min(count - 1, frame));
    });
  const shown = Math.min(mostHandoutFrames, handout.frames.length + 1);
  return (
    <fieldset>
      <legend>Pictures</legend>
      {places.slice(0, shown).map((label, place) => {
        const frame = handout.frames[place];
        const known = named.some((each) => each.frame === frame);
        return (
          <div className="handout-frame" key={label}>
            <label>
              <span>{label}</span>
              <select
                value={frame === undefined ? none : String(frame)}
                onChange={(event) =>
                  put(place, event.target.value === none ? null : Number(event.target.value))
                }
              >
                <option value={none}>None</option>
                {frame !== undefined && !known && (
                  <option value={frame}>
                    {frame + 1} · {realTimeOf(clock, frame).toFixed(2)} s
                  </option>
                )}
                {named.map((each) => (
                  <option key={each.frame} value={each.frame}>
                    {each.words}
                  </option>
                ))}
              </select>
            </label>
            {frame !== undefined && (
              <>
                <button
                  type="button"
                  aria-label={`${label}: one frame back`}
                  disabled={frame === 0}
                  onClick={() => put(place, frame - 1)}
                >
                  ‹
                </button>
                <button
                  type="button"
                  aria-label={`${label}: one frame on`}
                  disabled={frame === count - 1}
                  onClick={() => put(place, frame + 1)}
                >
                  ›
                </button>
              </>
            )}
          </div>
        );
      })}
    </fieldset>
  );
}
