import { clockWords, secondsOf } from '#core/practice/clock-words';
import type { Pace } from '#core/practice/practice-time';
import { KeptField } from '../ui/kept-field';
import { setsWords } from '#core/words/sets';

interface Props {
  readonly pace: Pace;
  readonly onChange: (pace: Pace) => void;
}

/** As in the practice's file. */
const limits = { least: 40, most: 600 } as const;

/** The squad's pace that repeats without a send-off are reckoned at. */
export function PaceForm({ pace, onChange }: Props) {
  return (
    <div className="pace-form">
      {(['swim', 'kick'] as const).map((what) => (
        <label key={what}>
          {setsWords('n100MMSs', { what })}
          <KeptField
            inputMode="numeric"
            autoComplete="off"
            value={pace[what]}
            textOf={clockWords}
            readOf={(text) => {
              const seconds = secondsOf(text);
              return seconds !== null && seconds >= limits.least && seconds <= limits.most
                ? seconds
                : undefined;
            }}
            onKeep={(seconds) => onChange({ ...pace, [what]: seconds })}
          />
        </label>
      ))}
    </div>
  );
}
