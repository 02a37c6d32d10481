import { ConsentWords } from '../card/consent-words';
import { dayWords } from '#core/swim-file/card-words';
import type { SwimGroup } from '../swims/filter-swims';

interface Props {
  readonly group: SwimGroup;
  readonly onSwimmer: (swimmerId: string) => void;
}

/** Who swims in the tiles beside it: how many swims, consent, and what is known of the swimmer. */
export function SwimmerHead({ group, onSwimmer }: Props) {
  const { swimmer, swims, name } = group;
  const newest = swims[0];
  return (
    <div className="swimmer">
      <h2>{name}</h2>
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
  );
}
