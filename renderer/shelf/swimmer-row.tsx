import { useId } from 'react';
import { ConsentWords } from '../card/consent-words';
import { dayWords } from '../card/card-words';
import type { HostClient } from '../host/host-client';
import type { SwimGroup } from './filter-swims';
import { SwimTile } from './swim-tile';

interface Props {
  readonly group: SwimGroup;
  readonly host: HostClient;
  /** The tile Tab comes to. */
  readonly reached: string | null;
  readonly onOpen: (swimId: string) => void;
  readonly onRemove: (swimId: string) => void;
  readonly onSwimmer: (swimmerId: string) => void;
}

/** One swimmer and all their swims, newest first. */
export function SwimmerRow({ group, host, reached, onOpen, onRemove, onSwimmer }: Props) {
  const heading = useId();
  const { swimmer, swims, name } = group;
  const newest = swims[0];
  return (
    <section className="swimmer-row" aria-labelledby={heading}>
      <div className="swimmer">
        <h2 id={heading}>{name}</h2>
        {newest && (
          <p>
            {swims.length} {swims.length === 1 ? 'swim' : 'swims'}, last {dayWords(newest.card.date)}
          </p>
        )}
        {swimmer && (
          <>
            <p>
              <ConsentWords swimmer={swimmer} />
            </p>
            <button
              type="button"
              onClick={() => onSwimmer(swimmer.id)}
              aria-label={`About ${name}`}
              title="Consent, streamline length, birth year"
            >
              About {name}…
            </button>
          </>
        )}
      </div>
      <ul className="shelf-grid">
        {swims.map((swim) => (
          <SwimTile
            key={swim.id}
            swim={swim}
            thumbnail={host.thumbnailAddress(swim.id)}
            reached={swim.id === reached}
            onOpen={onOpen}
            onRemove={onRemove}
          />
        ))}
      </ul>
    </section>
  );
}
