import type { Ref } from 'react';
import { strokes, views } from '#core/swim-file/swim-schema';
import { strokeWords, viewWords } from '#core/swim-file/card-words';
import { type Care, cares, noFilter, type ShelfFilter, type SwimGroup } from '../swims/filter-swims';

interface Props {
  /** All swimmers with swims, whatever is filtered. */
  readonly all: readonly SwimGroup[];
  readonly shown: number;
  readonly total: number;
  readonly filter: ShelfFilter;
  readonly search: Ref<HTMLInputElement>;
  readonly onChange: (filter: ShelfFilter) => void;
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const careWords: Readonly<Record<Care, string>> = {
  missing: 'Clip missing or changed',
  copies: 'Changed in two places',
  twice: 'Same clip twice',
  unmarked: 'Nothing marked',
  'no-one': 'No swimmer named',
};

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly any: string;
  readonly value: T | null;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChoose: (value: T | null) => void;
}
function Choice<T extends string>({ label, any, value, choices, onChoose }: ChoiceProps<T>) {
  return (
    <select
      aria-label={label}
      className={value === null ? undefined : 'chosen'}
      value={value ?? ''}
      onChange={(event) => onChoose((event.target.value || null) as T | null)}
    >
      <option value="">{any}</option>
      {choices.map(([each, words]) => (
        <option key={each} value={each}>
          {words}
        </option>
      ))}
    </select>
  );
}

/** Search as you type, and the questions asked most: who, which stroke, with or without aids, seen from where. */
export function ShelfFilters({ all, shown, total, filter, search, onChange }: Props) {
  const set = (said: Partial<ShelfFilter>): void => onChange({ ...filter, ...said });
  const filtered = shown !== total;
  return (
    <search className="shelf-filters">
      <input
        ref={search}
        type="search"
        placeholder="Search swims"
        title="Search swims (/)"
        aria-label="Search swims"
        value={filter.text}
        onChange={(event) => set({ text: event.target.value })}
      />
      <Choice
        label="Swimmer"
        any="All swimmers"
        value={filter.swimmer}
        choices={all.map(({ key, name }) => [key, name] as const)}
        onChoose={(swimmer) => set({ swimmer })}
      />
      <Choice
        label="Stroke"
        any="Any stroke"
        value={filter.stroke}
        choices={strokes.map((each) => [each, sentence(strokeWords[each])] as const)}
        onChoose={(stroke) => set({ stroke })}
      />
      <Choice
        label="Aids"
        any="Any aids"
        value={filter.aids}
        choices={[
          ['without', 'Without aids'],
          ['with', 'With aids'],
        ]}
        onChoose={(aids) => set({ aids })}
      />
      <Choice
        label="View"
        any="Any view"
        value={filter.view}
        choices={views.map((each) => [each, sentence(viewWords[each])] as const)}
        onChoose={(view) => set({ view })}
      />
      <Choice
        label="Needs care"
        any="Any state"
        value={filter.care}
        choices={cares.map((each) => [each, careWords[each]] as const)}
        onChoose={(care) => set({ care })}
      />
      <output>{filtered && `${shown} of ${total} swims`}</output>
      {filtered && (
        <button type="button" className="quiet" onClick={() => onChange(noFilter)}>
          Show all
        </button>
      )}
    </search>
  );
}
