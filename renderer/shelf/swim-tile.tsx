import type { SwimSummary } from '#core/host-contract/operations';
import { catalogue } from '#core/measures/families';
import { cardWords } from '../bench/card-words';

const labels = new Map(catalogue.map((each) => [each.id, each]));
const digitsOf = (half: number): number => Math.max(0, Math.min(4, 1 - Math.floor(Math.log10(half || 1))));

interface Props {
  readonly swim: SwimSummary;
  readonly thumbnail: string;
  readonly onOpen: () => void;
  readonly onRemove: () => void;
}

/** One swim on the shelf: what was swum, how far it is marked, and its first readings. */
export function SwimTile({ swim, thumbnail, onOpen, onRemove }: Props) {
  const { card, clip } = swim;
  const words = cardWords(card);
  const swum = words.title.slice(words.title.indexOf('·') + 2);
  return (
    <li className="swim-tile">
      <button
        type="button"
        className="swim-tile-open"
        onClick={onOpen}
        onKeyDown={(event) => {
          if (event.key === 'Delete') onRemove();
        }}
        aria-label={`${words.title}, ${words.facts.join(', ')}`}
      >
        <span className="swim-tile-picture">
          {swim.hasThumbnail ? (
            <img src={thumbnail} alt="" loading="lazy" />
          ) : (
            <span className="swim-tile-blank">no picture yet</span>
          )}
          {card.invented && <em>invented</em>}
          {swim.clipStatus !== 'present' && (
            <em className="swim-tile-warn">
              {swim.clipStatus === 'missing' ? 'clip missing' : 'clip changed'}
            </em>
          )}
        </span>
        <strong>{swum}</strong>
        <small>{words.facts.join(' · ')}</small>
        <small>
          {swim.eventCount === 0 && swim.postureCount === 0
            ? 'Nothing marked yet'
            : `${swim.eventCount} events, ${swim.postureCount} body lines`}
          {' · '}
          {clip.seconds.toFixed(1)} s
        </small>
        {swim.headline.map((reading) => {
          const digits = digitsOf(reading.half);
          return (
            <span key={reading.id} className="swim-tile-reading">
              <span>{labels.get(reading.id)?.label ?? reading.id}</span>
              <b>
                {reading.value.toFixed(digits)} ± {reading.half.toFixed(digits)} <i>{reading.unit}</i>
              </b>
            </span>
          );
        })}
      </button>
      <button
        type="button"
        className="swim-tile-remove"
        onClick={onRemove}
        title="Move to the bin (Delete)"
        aria-label={`Move ${words.title} to the bin`}
      >
        ✕
      </button>
    </li>
  );
}
