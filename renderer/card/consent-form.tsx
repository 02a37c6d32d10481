import type { Swimmer } from '#core/swim-file/squad-schema';

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
      <legend>Consent</legend>
      <label className="tick">
        <input
          type="checkbox"
          checked={consent !== null}
          onChange={(event) =>
            onChange(event.target.checked ? { givenOn: today, givenBy: '', note: '' } : null)
          }
        />
        I hold written consent to film and show this swimmer
      </label>
      {consent && (
        <>
          <label>
            Given on
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
            Given by
            <input
              required
              maxLength={120}
              placeholder="swimmer or guardian"
              value={consent.givenBy}
              onChange={(event) => onChange({ ...consent, givenBy: event.target.value })}
            />
          </label>
          <label className="wide">
            What it covers
            <input
              maxLength={1000}
              value={consent.note}
              onChange={(event) => onChange({ ...consent, note: event.target.value })}
            />
          </label>
        </>
      )}
      <ul className="caution wide">
        <li>For a minor, a guardian gives it, in writing.</li>
        <li>No one else in shot.</li>
        <li>Delete the film when the swimmer or guardian asks for it.</li>
        <li>The rules of your pool and federation come first.</li>
      </ul>
    </fieldset>
  );
}
