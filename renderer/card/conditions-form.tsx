import { useState } from 'react';
import { type ConditionTags, depths, headPositions, hipPositions } from '#core/swim-file/condition-tags';
import { conditionWords } from '#core/swim-file/card-words';
import { sentence } from './sentence';
import { cardFormWords } from '#core/words/card-form';

interface Props {
  readonly conditions: ConditionTags;
  readonly onChange: (conditions: ConditionTags) => void;
}

const asked = [
  { of: 'head', label: cardFormWords('head'), levels: headPositions },
  { of: 'hips', label: cardFormWords('hips'), levels: hipPositions },
  { of: 'depth', label: cardFormWords('depth'), levels: depths },
] as const;

/** Free tags as typed: commas apart, each once, as many and as long as a file may hold. */
export function tagsOf(text: string): string[] {
  const tags = text.split(',').map((each) => each.trim().slice(0, 60));
  return [...new Set(tags.filter((each) => each !== ''))].slice(0, 10);
}

/** Positions and conditions that trials compare and a card has no other field for. */
export function ConditionsForm({ conditions, onChange }: Props) {
  // as typed, so that a comma just written is not taken away
  const [typed, setTyped] = useState(() => conditions.free.join(', '));
  return (
    <fieldset className="wide conditions-form">
      <legend>{cardFormWords('trialsWhatTried')}</legend>
      {asked.map(({ of, label, levels }) => (
        <label key={of}>
          {label}
          <select
            value={conditions[of] ?? ''}
            onChange={(event) => {
              const level = levels.find((each) => each === event.target.value) ?? null;
              onChange({ ...conditions, [of]: level });
            }}
          >
            <option value="">{cardFormWords('notSaid')}</option>
            {levels.map((level) => (
              <option key={level} value={level}>
                {sentence(conditionWords(of, level))}
              </option>
            ))}
          </select>
        </label>
      ))}
      <label className="free-tags">
        {cardFormWords('otherTags')}
        <input
          value={typed}
          maxLength={600}
          placeholder={cardFormWords('yourOwnWords')}
          onChange={(event) => {
            setTyped(event.target.value);
            onChange({ ...conditions, free: tagsOf(event.target.value) });
          }}
        />
      </label>
    </fieldset>
  );
}
