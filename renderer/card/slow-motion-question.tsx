import { useId, useState } from 'react';
import { filmedRates } from '#core/timeline/capture-rate';
import type { ClipFacts } from '../video/frame-source';
import { slowMotionWords } from './slow-motion-words';
import { cardFormWords } from '#core/words/card-form';

interface Props {
  readonly facts: Pick<ClipFacts, 'rate' | 'taggedSlowdown'>;
  /** Playback seconds per real second; null while the coach hasn't said and the file doesn't tell. */
  readonly factor: number | null;
  /** Kicks a second of film as it plays, when they are marked. */
  readonly filmHz?: number | null;
  readonly onChange: (factor: number) => void;
}

const presets = [1, 2, 4, 8] as const;

/**
 * How much slower than life the file plays. The worst error there is, so its effect is told in numbers. The rate it was
 * filmed at is the answer; the buttons only fill it in.
 */
export function SlowMotionQuestion({ facts, factor, filmHz = null, onChange }: Props) {
  const name = useId();
  // as it was typed: a number worked out from the answer would change under the coach's fingers
  const [typed, setTyped] = useState<string | null>(null);
  const known = factor === null ? '' : String(Number((factor * facts.rate).toFixed(3)));
  const choose = (each: number): void => {
    setTyped(null);
    onChange(each);
  };
  return (
    <fieldset className="slow-motion">
      <legend>{cardFormWords('filmedSlowMotion')}</legend>
      <div className="choices">
        {presets.map((each) => (
          <label key={each}>
            <input type="radio" name={name} checked={factor === each} onChange={() => choose(each)} />
            {cardFormWords('slower', { each })}
          </label>
        ))}
        <label>
          {cardFormWords('filmedAt')}
          <input
            type="number"
            inputMode="decimal"
            required
            min={filmedRates.least}
            max={filmedRates.most}
            step="any"
            value={typed ?? known}
            onChange={({ target: { value, valueAsNumber: asked } }) => {
              setTyped(value);
              if (asked >= filmedRates.least && asked <= filmedRates.most) onChange(asked / facts.rate);
            }}
          />
          {cardFormWords('second')}
        </label>
      </div>
      <p>{slowMotionWords(facts, factor, filmHz)}</p>
    </fieldset>
  );
}
