import type { Swimmer } from '#core/swim-file/squad-schema';
import { cardFormWords } from '#core/words/card-form';

type Consent = NonNullable<Swimmer['consent']>;

interface Props {
  readonly consent: Consent | null;
  readonly today: string;
  readonly onChange: (consent: Consent | null) => void;
}

/** Leave to film and show: when and by whom it was given, with the cautions that go with filming minors. */
export function ConsentForm({ consent, today, onChange }: Props) {
  return (
    <fieldset className="wide consent-form">
      <legend>{cardFormWords('consent')}</legend>
      <label className="tick">
        <input
          type="checkbox"
          checked={consent !== null}
          onChange={(event) =>
            onChange(event.target.checked ? { givenOn: today, givenBy: '', note: '' } : null)
          }
        />
        {cardFormWords('iHoldWritten')}
      </label>
      {consent && (
        <>
          <label>
            {cardFormWords('given')}
            <input
              type="date"
              required
              value={consent.givenOn}
              onChange={(event) =>
                event.target.value && onChange({ ...consent, givenOn: event.target.value })
              }
            />
          </label>
          <label>
            {cardFormWords('given2')}
            <input
              required
              maxLength={120}
              placeholder={cardFormWords('swimmerOrGuardian')}
              value={consent.givenBy}
              onChange={(event) => onChange({ ...consent, givenBy: event.target.value })}
            />
          </label>
          <label className="wide">
            {cardFormWords('whatCovers')}
            <input
              maxLength={1000}
              value={consent.note}
              onChange={(event) => onChange({ ...consent, note: event.target.value })}
            />
          </label>
        </>
      )}
      <ul className="caution wide">
        <li>{cardFormWords('minorGuardianGives')}</li>
        <li>{cardFormWords('noOneElseShot')}</li>
        <li>{cardFormWords('deleteFilmWhen')}</li>
        <li>{cardFormWords('rulesYourPool')}</li>
      </ul>
    </fieldset>
  );
}
