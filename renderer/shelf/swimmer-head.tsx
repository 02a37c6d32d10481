import { ConsentWords } from '../card/consent-words';
import { dayWords } from '#core/swim-file/card-words';
import type { SwimGroup } from '../swims/filter-swims';
import { shelfWords } from '#core/words/shelf';

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
      {newest && <p>{shelfWords('swimsLast', { swims: swims.length, day: dayWords(newest.card.date) })}</p>}
      {swimmer && (
        <>
          <p>
            <ConsentWords swimmer={swimmer} />
          </p>
          <button
            type="button"
            onClick={() => onSwimmer(swimmer.id)}
            aria-label={shelfWords('about', { name })}
            title={shelfWords('consentStreamlineLength')}
          >
            {shelfWords('aboutName', { name })}
          </button>
        </>
      )}
    </div>
  );
}
