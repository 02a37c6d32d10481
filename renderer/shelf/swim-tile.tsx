import { memo } from 'react';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { aidsWords, cardWords, dayWords, swumWords, viewWords } from '../card/card-words';
import { HeadlineReading } from './headline-reading';

interface Props {
  readonly swim: SwimSummary;
  readonly thumbnail: string;
  /** Whether Tab comes to this tile; arrows go to the others. */
  readonly reached: boolean;
  readonly onOpen: (swimId: string) => void;
  readonly onRemove: (swimId: string) => void;
}

function marksSoFar({ eventCount, postureCount }: SwimSummary): string {
  if (eventCount === 0 && postureCount === 0) return 'Nothing marked yet';
  const events = `${eventCount} ${eventCount === 1 ? 'event' : 'events'}`;
  const lines = `${postureCount} ${postureCount === 1 ? 'body line' : 'body lines'}`;
  return `${events}, ${lines}`;
}

/** What a screen reader says of the tile: who first, because arrows cross from swimmer to swimmer. */
function spokenName(swim: SwimSummary): string {
  const { title, facts } = cardWords(swim.card);
  const trouble = clipTrouble[swim.clipStatus];
  return [title, ...facts, marksSoFar(swim), ...(trouble ? [trouble] : [])].join(', ');
}

const clipTrouble = {
  present: null,
  missing: 'clip missing',
  changed: 'clip changed',
} as const;

/** One swim on the shelf: what was swum, how far it is marked, and its first readings. */
export const SwimTile = memo(function SwimTile({ swim, thumbnail, reached, onOpen, onRemove }: Props) {
  const { card, clip } = swim;
  const { what, how } = swumWords(card);
  const facts = [...how, aidsWords(card.aids), viewWords[card.view]].join(' · ');
  const trouble = clipTrouble[swim.clipStatus];
  return (
    <li className="swim-tile">
      <button
        type="button"
        className="swim-tile-open"
        data-swim={swim.id}
        tabIndex={reached ? 0 : -1}
        aria-label={spokenName(swim)}
        onClick={() => onOpen(swim.id)}
      >
        <span className="swim-tile-picture">
          {swim.hasThumbnail ? (
            <img src={thumbnail} alt="" loading="lazy" decoding="async" />
          ) : (
            <span className="swim-tile-blank">no picture yet</span>
          )}
          {card.invented && <em>invented</em>}
          {trouble && <em className="swim-tile-warn">⚠ {trouble}</em>}
        </span>
        <span className="swim-tile-words">
          <span className="swim-tile-when">
            <time dateTime={card.date}>{dayWords(card.date)}</time>
            <span>
              {clip.seconds.toFixed(1)} s
              {clip.slowdown > 1 && `, slowed ${Number(clip.slowdown.toPrecision(3))}×`}
            </span>
          </span>
          <strong>{what}</strong>
          <small>{facts}</small>
        </span>
        <span className="swim-tile-foot">
          <small>{marksSoFar(swim)}</small>
          {swim.headline.map((reading) => (
            <HeadlineReading key={reading.id} reading={reading} slowdown={swim.clip.slowdown} />
          ))}
        </span>
      </button>
      <button
        type="button"
        className="swim-tile-remove"
        tabIndex={-1}
        onClick={() => onRemove(swim.id)}
        title="Move to the bin (Delete)"
        aria-label={`Move ${what} of ${dayWords(card.date)} to the bin`}
      >
        ✕
      </button>
    </li>
  );
});
