import { useId } from 'react';
import type { ClipFacts } from '../video/frame-source';
import { slowMotionWords } from './slow-motion-words';

interface Props {
  readonly facts: Pick<ClipFacts, 'rate' | 'taggedSlowdown'>;
  /** Playback seconds per real second; null while the coach hasn't said and the file doesn't tell. */
  readonly factor: number | null;
  /** Kicks a second of film as it plays, when they are marked. */
  readonly filmHz?: number | null;
  readonly onChange: (factor: number) => void;
}

const presets = [1, 2, 4, 8] as const;

/** How much slower than life the file plays. The worst error there is, so its effect is told in numbers. */
export function SlowMotionQuestion({ facts, factor, filmHz = null, onChange }: Props) {
  const name = useId();
  return (
    <fieldset className="slow-motion">
      <legend>Was this filmed in slow motion?</legend>
      <div className="choices">
        {presets.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name={name}
              required
              checked={factor === each}
              onChange={() => onChange(each)}
            />
            {each === 1 ? 'No, true speed' : `${each}× slower`}
          </label>
        ))}
        <label>
          Filmed at
          <input
            type="number"
            min="1"
            max="10000"
            step="any"
            value={factor === null ? '' : Number((factor * facts.rate).toFixed(2))}
            onChange={(event) => {
              const asked = event.target.valueAsNumber / facts.rate;
              if (asked > 0 && asked <= 1000) onChange(asked);
            }}
          />
          a second
        </label>
      </div>
      <p>{slowMotionWords(facts, factor, filmHz)}</p>
    </fieldset>
  );
}
