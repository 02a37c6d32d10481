import { memo } from 'react';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { aidsWords, cardWords, dayWords, swumWords, triedWords, viewWords } from '#core/swim-file/card-words';
import { useStore } from 'zustand';
import type { SeeQueue } from '../see/see-queue';
import { windowSeeQueue } from '../see/window-see-queue';
import { HeadlineReading } from './headline-reading';
import { MissingPicture } from './missing-picture';
import { useTip } from '../ui/use-tip';
import { shelfWords } from '#core/words/shelf';

/** What can be done with a tile; the same for all of them. */
export interface TileActs {
  readonly open: (swimId: string) => void;
  readonly remove: (swimId: string) => void;
  /** Chooses a swim or no longer; `along`: with all between it and the one chosen last. */
  readonly choose: (swimId: string, along: boolean) => void;
  /** Shows the versions kept of a swim changed in two places. */
  readonly versions: (swimId: string) => void;
  /** Takes the picture of a swim that has none from its film; false when it can't be had. */
  readonly retake: (swimId: string) => Promise<boolean>;
}

interface Props {
  readonly swim: SwimSummary;
  readonly thumbnail: string;
  /** Whether Tab comes to this tile; arrows go to the others. */
  readonly reached: boolean;
  /** Among the swims chosen to be changed together. */
  readonly chosen: boolean;
  readonly acts: TileActs;
}

function marksSoFar({ eventCount, postureCount, seen }: SwimSummary): string {
  if (eventCount === 0 && postureCount === 0) return seen ? '' : shelfWords('nothingMarkedYet');
  const events = shelfWords('events', { eventCount });
  const lines = shelfWords('bodyLines', { postureCount });
  return `${events}, ${lines}`;
}

/** How far what the machine saw is reviewed: found, doubtful, reviewed. Empty where nothing was seen. */
function seenWords({ seen }: Pick<SwimSummary, 'seen'>): string {
  if (!seen) return '';
  if (seen.open === 0) return shelfWords('seenReviewed');
  return seen.doubtful > 0
    ? shelfWords('seenDoubtful', { open: seen.open, doubtful: seen.doubtful })
    : shelfWords('seenOpen', { open: seen.open });
}

/** What the queue of swims to see says of one. */
function queueWords({ waiting, now, refused }: SeeQueue, swimId: string): string {
  if (now?.swimId === swimId) return shelfWords('seeingNow', { percent: Math.round(100 * now.share) });
  if (waiting.includes(swimId)) return shelfWords('waitsSeen');
  const why = refused.get(swimId);
  return why ? shelfWords('notSeen', { why }) : '';
}

/** What a screen reader says of the tile: who first, because arrows cross from swimmer to swimmer. */
function spokenName(swim: SwimSummary): string {
  const { title, facts } = cardWords(swim.card);
  const trouble = clipTrouble[swim.clipStatus];
  const copies = swim.copies > 0 ? [shelfWords('changedTwoPlaces2')] : [];
  const said = [marksSoFar(swim), seenWords(swim)].filter((words) => words !== '');
  return [title, ...facts, ...said, ...(trouble ? [trouble] : []), ...copies].join(', ');
}

const clipTrouble = {
  present: null,
  missing: shelfWords('clipMissing'),
  changed: shelfWords('clipChanged'),
} as const;

/** One swim on the shelf: what was swum, how far it is marked, and its first readings. */
export const SwimTile = memo(function SwimTile({ swim, thumbnail, reached, chosen, acts }: Props) {
  const tip = useTip();
  const queued = useStore(windowSeeQueue, (state) => queueWords(state, swim.id));
  const { card, clip } = swim;
  const { what, how } = swumWords(card);
  const facts = [...triedWords(card.conditions), ...how, aidsWords(card.aids), viewWords[card.view]].join(
    ' · ',
  );
  const trouble = clipTrouble[swim.clipStatus];
  return (
    <li className={chosen ? 'swim-tile swim-tile-chosen' : 'swim-tile'}>
      <button
        type="button"
        className="swim-tile-open"
        data-swim={swim.id}
        tabIndex={reached ? 0 : -1}
        aria-label={spokenName(swim)}
        onClick={() => acts.open(swim.id)}
      >
        <span className="swim-tile-picture">
          {swim.hasThumbnail ? (
            <img src={thumbnail} alt="" loading="lazy" decoding="async" />
          ) : swim.clipStatus === 'present' ? (
            <MissingPicture swimId={swim.id} address={thumbnail} retake={acts.retake} />
          ) : (
            <span className="swim-tile-blank">{shelfWords('noPicture')}</span>
          )}
          {card.invented && <em>{shelfWords('invented')}</em>}
          {trouble && <em className="swim-tile-warn">⚠ {trouble}</em>}
        </span>
        <span className="swim-tile-words">
          <span className="swim-tile-when">
            <time dateTime={card.date}>{dayWords(card.date)}</time>
            <span>
              {`${clip.seconds.toFixed(1)} s`}
              {clip.slowdown > 1 && shelfWords('slowed', { slowdown: Number(clip.slowdown.toPrecision(3)) })}
            </span>
          </span>
          <strong>{what}</strong>
          <small>{facts}</small>
        </span>
        <span className="swim-tile-foot">
          <small>{marksSoFar(swim)}</small>
          {(queued || seenWords(swim)) && (
            <small className="swim-tile-seen">{queued || seenWords(swim)}</small>
          )}
          {swim.headline.map((reading) => (
            <HeadlineReading key={reading.id} reading={reading} slowdown={swim.clip.slowdown} />
          ))}
        </span>
      </button>
      <label className="swim-tile-choose" title={tip('choose', shelfWords('chooseChangeSeveral'))}>
        <input
          type="checkbox"
          tabIndex={-1}
          checked={chosen}
          aria-label={shelfWords('choose', { what, day: dayWords(card.date) })}
          onChange={() => undefined}
          onClick={(event) => acts.choose(swim.id, event.shiftKey)}
        />
      </label>
      {swim.copies > 0 && (
        <button type="button" className="swim-tile-versions" onClick={() => acts.versions(swim.id)}>
          {shelfWords('changedTwoPlacesMore')}
        </button>
      )}
      <button
        type="button"
        className="swim-tile-remove"
        tabIndex={-1}
        onClick={() => acts.remove(swim.id)}
        title={tip('remove', shelfWords('moveBin'))}
        aria-label={shelfWords('moveBinWhat', { what, day: dayWords(card.date) })}
      >
        ✕
      </button>
    </li>
  );
});
