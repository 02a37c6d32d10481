import { useState } from 'react';
import { choosableReadings } from '#core/practice/choosable-readings';
import { catalogue } from '#core/measures/families';
import { type Target, targetInForce, withTarget } from '#core/swim-file/target-in-force';
import { dayWords } from '#core/swim-file/card-words';
import { bandWords } from '#core/measures/target-mark';
import { BandFields } from './band-fields';
import './targets.css';
import { targetsWords } from '#core/words/targets';
import { rich } from '../ui/rich';

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
      <legend>{targetsWords('targets')}</legend>
      {inForce.length === 0 && <p>{targetsWords('noneYetBandSet')}</p>}
      <ul>
        {inForce.map(({ reading, low, high, from }) => (
          <li key={reading}>
            <span>
              {labelOf(reading)}: {bandWords(low, high)}
              {from && <small> {targetsWords('sinceDay', { day: dayWords(from) })}</small>}
            </span>
            <button type="button" onClick={() => setChosen(reading)}>
              {rich(
                targetsWords.parts('change', {
                  labelOf: labelOf(reading),
                  span: (inside) => <span className="unseen">{inside}</span>,
                }),
              )}
            </button>
            <button type="button" onClick={() => set(reading, null, null)}>
              {rich(
                targetsWords.parts('giveUpLabelOf', {
                  labelOf: labelOf(reading),
                  span: (inside) => <span className="unseen">{inside}</span>,
                }),
              )}
            </button>
          </li>
        ))}
      </ul>
      <label>
        {targetsWords('target2')}
        <select value={chosen} onChange={(event) => setChosen(event.target.value)}>
          <option value="">{targetsWords('chooseReading')}</option>
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
          unit={targetsWords('itsOwnUnit')}
          low={known?.low ?? null}
          high={known?.high ?? null}
          onKeep={(low, high) => set(chosen, low, high)}
        />
      )}
      <small>{targetsWords('olderBandsStay')}</small>
    </fieldset>
  );
}
