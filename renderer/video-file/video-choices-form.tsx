import { speedWords } from '#core/video/speed-words';
import { KeepInViewTick } from '../stage/keep-in-view-tick';
import type { VideoChoices, VideoRequest } from './video-request';
import { videoFileWords } from '#core/words/video-file';

interface Props {
  readonly request: VideoRequest;
  readonly choices: VideoChoices;
  /** The ends as they are typed. */
  readonly fields: { readonly from: string; readonly to: string };
  readonly busy: boolean;
  readonly change: (part: Partial<VideoChoices>) => void;
  readonly type: (end: 'from' | 'to', text: string) => void;
}

const shown: readonly { readonly what: keyof VideoChoices['show']; readonly words: string }[] = [
  { what: 'bodyLine', words: videoFileWords('bodyLines') },
  { what: 'angles', words: videoFileWords('angles') },
  { what: 'score', words: videoFileWords('scoreUnderPicture') },
  { what: 'flashes', words: videoFileWords('eventNamesThey') },
  { what: 'facts', words: videoFileWords('titleFrameTime') },
];
const speeds = [1, 2, 4, 8] as const;

/** What goes into a video, and how fast it runs. */
export function VideoChoicesForm({ request: { parts, mode }, choices, fields, busy, change, type }: Props) {
  const free = mode === 'free';
  return (
    <fieldset disabled={busy} className="video-choices">
      <legend className="unseen">{videoFileWords('whatVideoShows')}</legend>
      <div className="video-row">
        <label>
          {videoFileWords('fromFrom', {
            value: mode === 'cycle' ? videoFileWords('cycle') : videoFileWords('seconds'),
            value2: parts.length > 1 ? videoFileWords('lock') : videoFileWords('start'),
          })}
          <input
            inputMode="decimal"
            value={fields.from}
            disabled={free}
            onChange={(event) => type('from', event.target.value)}
          />
        </label>
        <label>
          {videoFileWords('to')}
          <input inputMode="decimal" value={fields.to} onChange={(event) => type('to', event.target.value)} />
        </label>
      </div>
      {free && <p>{videoFileWords('freeEachOther')}</p>}
      <fieldset className="switch" aria-label={videoFileWords('speedVideo')}>
        {speeds.map((slow) => (
          <button
            key={slow}
            type="button"
            aria-pressed={choices.slow === slow}
            onClick={() => change({ slow })}
            title={speedWords(slow)}
          >
            {slow === 1 ? videoFileWords('trueSpeed') : speedWords(slow).replace(/^.*, (.).*$/, '$1 speed')}
          </button>
        ))}
      </fieldset>
      <KeepInViewTick
        className="video-check"
        keep={choices.keepInView}
        onKeep={(keepInView) => change({ keepInView })}
      />
      {shown.map(({ what, words }) => (
        <label key={what} className="video-check">
          <input
            type="checkbox"
            checked={choices.show[what]}
            onChange={(event) => change({ show: { ...choices.show, [what]: event.target.checked } })}
          />
          {words}
        </label>
      ))}
      <label>
        {videoFileWords('yourWordsUnder')}
        <input
          maxLength={160}
          value={choices.caption}
          onChange={(event) => change({ caption: event.target.value })}
        />
      </label>
      <div className="video-row">
        <label>
          {videoFileWords('size')}
          <select
            value={choices.width}
            onChange={(event) => change({ width: event.target.value === '1920' ? 1920 : 1280 })}
          >
            <option value={1920}>{videoFileWords('up1920Wide')}</option>
            <option value={1280}>{videoFileWords('up1280Wide')}</option>
          </select>
        </label>
        <label>
          {videoFileWords('picturesSecond')}
          <select
            value={choices.rate}
            onChange={(event) => change({ rate: event.target.value === '60' ? 60 : 30 })}
          >
            <option value={30}>30</option>
            <option value={60}>60</option>
          </select>
        </label>
      </div>
      <label className="video-check">
        <input
          type="checkbox"
          checked={choices.sound && choices.slow === 1}
          disabled={choices.slow !== 1}
          onChange={(event) => change({ sound: event.target.checked })}
        />
        {videoFileWords('filmsSoundAt', { slow: choices.slow })}
      </label>
    </fieldset>
  );
}
