import { sentence } from './sentence';

interface Props<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly T[];
  readonly words: (value: T) => string;
  readonly onPick: (value: T) => void;
}

/** One of a few, under its label. */
export function Pick<T extends string>({ label, value, choices, words, onPick }: Props<T>) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onPick(event.target.value as T)}>
        {choices.map((each) => (
          <option key={each} value={each}>
            {sentence(words(each))}
          </option>
        ))}
      </select>
    </label>
  );
}
