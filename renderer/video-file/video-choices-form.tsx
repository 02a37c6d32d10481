import { speedWords } from '#core/video/speed-words';
import type { VideoChoices, VideoRequest } from './video-request';

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
  { what: 'bodyLine', words: 'Body lines' },
  { what: 'angles', words: 'Angles' },
  { what: 'score', words: 'Score under the picture' },
  { what: 'flashes', words: 'Event names as they happen' },
  { what: 'facts', words: 'Title, frame and time' },
];
const speeds = [1, 2, 4, 8] as const;

/** What goes into a video, and how fast it runs. */
export function VideoChoicesForm({ request: { parts, mode }, choices, fields, busy, change, type }: Props) {
  const free = mode === 'free';
  return (
    <fieldset disabled={busy} className="video-choices">
      <legend className="unseen">What the video shows</legend>
      <div className="video-row">
        <label>
          From, {mode === 'cycle' ? '% of the cycle' : 'seconds'} from{' '}
          {parts.length > 1 ? 'the lock' : 'the start'}
          <input
            inputMode="decimal"
            value={fields.from}
            disabled={free}
            onChange={(event) => type('from', event.target.value)}
          />
        </label>
        <label>
          To
          <input inputMode="decimal" value={fields.to} onChange={(event) => type('to', event.target.value)} />
        </label>
      </div>
      {free && <p>Free of each other: both begin where they stand now.</p>}
      <fieldset className="switch" aria-label="Speed of the video">
        {speeds.map((slow) => (
          <button
            key={slow}
            type="button"
            aria-pressed={choices.slow === slow}
            onClick={() => change({ slow })}
            title={speedWords(slow)}
          >
            {slow === 1 ? 'true speed' : speedWords(slow).replace(/^.*, (.).*$/, '$1 speed')}
          </button>
        ))}
      </fieldset>
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
        Your words under it
        <input
          maxLength={160}
          value={choices.caption}
          onChange={(event) => change({ caption: event.target.value })}
        />
      </label>
      <div className="video-row">
        <label>
          Size
          <select
            value={choices.width}
            onChange={(event) => change({ width: event.target.value === '1920' ? 1920 : 1280 })}
          >
            <option value={1920}>up to 1920 wide</option>
            <option value={1280}>up to 1280 wide</option>
          </select>
        </label>
        <label>
          Pictures a second
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
        The film’s sound{choices.slow === 1 ? '' : ' (at true speed only)'}
      </label>
    </fieldset>
  );
}
