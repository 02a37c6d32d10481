import type { ClipFacts } from '../video/frame-source';

interface Props {
  readonly facts: ClipFacts;
  readonly factor: number;
  readonly onChange: (factor: number) => void;
}

const presets = [1, 2, 4, 8, 10] as const;
/** A kick a second in life, to show what the answer does; an example, not a norm. */
const exampleHz = 2;

const round = (value: number): string => Number(value.toPrecision(3)).toString();

/** How much slower than life the file plays. The worst error there is, so its effect is told in numbers. */
export function SlowMotionQuestion({ facts, factor, onChange }: Props) {
  const told = facts.taggedSlowdown !== null;
  return (
    <fieldset className="slow-motion">
      <legend>Was this filmed in slow motion?</legend>
      <div className="choices">
        {presets.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="slow-motion"
              checked={factor === each}
              onChange={() => onChange(each)}
            />
            {each === 1 ? 'No, true speed' : `${each} × slower`}
          </label>
        ))}
        <label>
          Filmed at
          <input
            type="number"
            min="1"
            max="2000"
            step="any"
            value={Number((factor * facts.rate).toFixed(2))}
            onChange={(event) => {
              const rate = event.target.valueAsNumber;
              if (rate > 0 && rate / facts.rate <= 1000) onChange(rate / facts.rate);
            }}
          />
          pictures a second
        </label>
      </div>
      <p>
        {told &&
          `The file says it was filmed at ${round((facts.taggedSlowdown ?? 1) * facts.rate)} pictures a second. `}
        {factor === 1
          ? `Played as it was: ${round(facts.rate)} pictures a second.`
          : `${round(factor)} × slower than life: a kick of ${exampleHz} Hz, played, looks like ${round(exampleHz / factor)} Hz and will read ${exampleHz} Hz.`}
      </p>
    </fieldset>
  );
}
