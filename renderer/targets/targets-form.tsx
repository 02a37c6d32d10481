import { useState } from 'react';
import { choosableReadings } from '#core/practice/choosable-readings';
import { catalogue } from '#core/measures/families';
import { type Target, targetInForce, withTarget } from '#core/swim-file/target-in-force';
import { dayWords } from '#core/swim-file/card-words';
import { bandWords } from '#core/measures/target-mark';
import { BandFields } from './band-fields';
import './targets.css';

interface Props {
  readonly targets: readonly Target[];
  readonly today: string;
  readonly onChange: (targets: Target[]) => void;
}

const labelOf = (reading: string): string => catalogue.find(({ id }) => id === reading)?.label ?? reading;

/** All targets of a swimmer: each can be changed or given up, and one for any reading added. */
export function TargetsForm({ targets, today, onChange }: Props) {
  const [chosen, setChosen] = useState('');
  const set = (reading: string, low: number | null, high: number | null): void => {
    onChange(withTarget(targets, { reading, low, high, from: today }));
    setChosen('');
  };
  const inForce = [...new Set(targets.map(({ reading }) => reading))].flatMap((reading) => {
    const target = targetInForce({ targets: [...targets] }, reading);
    return target ? [target] : [];
  });
  const known = inForce.find(({ reading }) => reading === chosen) ?? null;
  return (
    <fieldset className="wide targets-form">
      <legend>Targets</legend>
      {inForce.length === 0 && <p>None yet. A band set here shows beside the reading on every swim.</p>}
      <ul>
        {inForce.map(({ reading, low, high, from }) => (
          <li key={reading}>
            <span>
              {labelOf(reading)}: {bandWords(low, high)}
              {from && <small> since {dayWords(from)}</small>}
            </span>
            <button type="button" onClick={() => setChosen(reading)}>
              Change<span className="unseen"> {labelOf(reading)}</span>
            </button>
            <button type="button" onClick={() => set(reading, null, null)}>
              Give up<span className="unseen"> {labelOf(reading)}</span>
            </button>
          </li>
        ))}
      </ul>
      <label>
        Target for
        <select value={chosen} onChange={(event) => setChosen(event.target.value)}>
          <option value="">Choose a reading</option>
          {choosableReadings.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {chosen !== '' && (
        <BandFields
          key={chosen}
          unit="in its own unit"
          low={known?.low ?? null}
          high={known?.high ?? null}
          onKeep={(low, high) => set(chosen, low, high)}
        />
      )}
      <small>Older bands stay as the history. Time and distance under water can have no target.</small>
    </fieldset>
  );
}
