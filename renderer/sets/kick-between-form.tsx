import { armWords, sideWords } from '#core/swim-file/card-words';
import { armPositions, sidesUp } from '#core/swim-file/swim-schema';
import type { PracticeItem } from '#core/practice/practice-schema';
import { KeptNumber } from '../ui/kept-field';
import { Pick } from '../card/pick';
import { AidTicks } from './aid-ticks';
import { setsWords } from '#core/words/sets';

type Kick = NonNullable<PracticeItem['kickBetween']>;

interface Props {
  readonly kick: Kick | null;
  readonly onChange: (kick: Kick | null) => void;
}

const first: Kick = { metres: 25, aids: [], arms: 'stretched', sideUp: 'front' };

/** Kick swum between one repeat and the next. */
export function KickBetweenForm({ kick, onChange }: Props) {
  return (
    <fieldset className="wide kick-between">
      <legend>{setsWords('kickBetween')}</legend>
      <label className="tick wide">
        <input
          type="checkbox"
          checked={kick !== null}
          onChange={(event) => onChange(event.target.checked ? first : null)}
        />
        {setsWords('kickLengthsBetween')}
      </label>
      {kick && (
        <>
          <label>
            {setsWords('metresEachTime')}
            <KeptNumber
              least={1}
              most={10_000}
              value={kick.metres}
              onKeep={(metres) => metres !== null && onChange({ ...kick, metres })}
            />
          </label>
          <Pick
            label={setsWords('sideUp')}
            value={kick.sideUp}
            choices={sidesUp}
            words={(side) => sideWords[side]}
            onPick={(sideUp) => onChange({ ...kick, sideUp })}
          />
          <Pick
            label={setsWords('arms')}
            value={kick.arms}
            choices={armPositions}
            words={(arms) => armWords[arms]}
            onPick={(arms) => onChange({ ...kick, arms })}
          />
          <AidTicks
            legend={setsWords('aidsWhileKicking')}
            aids={kick.aids}
            onChange={(aids) => onChange({ ...kick, aids })}
          />
        </>
      )}
    </fieldset>
  );
}
