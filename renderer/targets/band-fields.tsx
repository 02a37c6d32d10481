import { useId, useState } from 'react';
import { bandTrouble, readBound } from './read-bound';
import { targetsWords } from '#core/words/targets';

interface Props {
  readonly unit: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly onKeep: (low: number | null, high: number | null) => void;
}

const text = (value: number | null): string => (value === null ? '' : String(value));

/** The two ends of a band and the button that keeps them. No form of its own: it also stands inside others. */
export function BandFields({ unit, low, high, onKeep }: Props) {
  const [said, setSaid] = useState({ low: text(low), high: text(high) });
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  const keep = (): void => {
    const [least, most] = [readBound(said.low), readBound(said.high)];
    const found = bandTrouble(least, most);
    setTrouble(found);
    if (found === null && least !== undefined && most !== undefined) onKeep(least, most);
  };
  return (
    <div className="band-fields">
      {(['low', 'high'] as const).map((end) => (
        <label key={end}>
          {end === 'low' ? targetsWords('atLeast') : targetsWords('atMost')}
          <input
            inputMode="decimal"
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return;
              event.preventDefault();
              keep();
            }}
            value={said[end]}
            aria-describedby={trouble ? id : undefined}
            aria-invalid={trouble !== null}
            onChange={(event) => setSaid({ ...said, [end]: event.target.value })}
          />
        </label>
      ))}
      <span>{unit}</span>
      <button type="button" onClick={keep}>
        {targetsWords('set')}
      </button>
      {trouble && (
        <p id={id} role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
