import { armWords, sideWords } from '#core/swim-file/card-words';
import { armPositions, sidesUp } from '#core/swim-file/swim-schema';
import type { PracticeItem } from '#core/practice/practice-schema';
import { KeptNumber } from '../ui/kept-field';
import { Pick } from '../card/pick';
import { AidTicks } from './aid-ticks';

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
      <legend>Kick between</legend>
      <label className="tick wide">
        <input
          type="checkbox"
          checked={kick !== null}
          onChange={(event) => onChange(event.target.checked ? first : null)}
        />
        Kick lengths between the repeats
      </label>
      {kick && (
        <>
          <label>
            Metres each time
            <KeptNumber
              least={1}
              most={10_000}
              value={kick.metres}
              onKeep={(metres) => metres !== null && onChange({ ...kick, metres })}
            />
          </label>
          <Pick
            label="Side up"
            value={kick.sideUp}
            choices={sidesUp}
            words={(side) => sideWords[side]}
            onPick={(sideUp) => onChange({ ...kick, sideUp })}
          />
          <Pick
            label="Arms"
            value={kick.arms}
            choices={armPositions}
            words={(arms) => armWords[arms]}
            onPick={(arms) => onChange({ ...kick, arms })}
          />
          <AidTicks
            legend="Aids while kicking"
            aids={kick.aids}
            onChange={(aids) => onChange({ ...kick, aids })}
          />
        </>
      )}
    </fieldset>
  );
}
