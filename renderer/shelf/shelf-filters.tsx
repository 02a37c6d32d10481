import type { Ref } from 'react';
import { strokes, views } from '#core/swim-file/swim-schema';
import { strokeWords, viewWords } from '#core/swim-file/card-words';
import { type Care, cares, noFilter, type ShelfFilter, type SwimGroup } from '../swims/filter-swims';
import { shelfWords } from '#core/words/shelf';

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
  missing: shelfWords('clipMissingOr'),
  copies: shelfWords('changedTwoPlaces'),
  twice: shelfWords('sameClipTwice'),
  unmarked: shelfWords('nothingMarked'),
  'no-one': shelfWords('noSwimmerNamed'),
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
        placeholder={shelfWords('searchSwims')}
        title={shelfWords('searchSwims2')}
        aria-label={shelfWords('searchSwims')}
        value={filter.text}
        onChange={(event) => set({ text: event.target.value })}
      />
      <Choice
        label={shelfWords('swimmer')}
        any={shelfWords('allSwimmers')}
        value={filter.swimmer}
        choices={all.map(({ key, name }) => [key, name] as const)}
        onChoose={(swimmer) => set({ swimmer })}
      />
      <Choice
        label={shelfWords('stroke')}
        any={shelfWords('anyStroke')}
        value={filter.stroke}
        choices={strokes.map((each) => [each, sentence(strokeWords[each])] as const)}
        onChoose={(stroke) => set({ stroke })}
      />
      <Choice
        label={shelfWords('aids')}
        any={shelfWords('anyAids')}
        value={filter.aids}
        choices={[
          ['without', shelfWords('withoutAids')],
          ['with', shelfWords('aids2')],
        ]}
        onChoose={(aids) => set({ aids })}
      />
      <Choice
        label={shelfWords('view')}
        any={shelfWords('anyView')}
        value={filter.view}
        choices={views.map((each) => [each, sentence(viewWords[each])] as const)}
        onChoose={(view) => set({ view })}
      />
      <Choice
        label={shelfWords('needsCare')}
        any={shelfWords('anyState')}
        value={filter.care}
        choices={cares.map((each) => [each, careWords[each]] as const)}
        onChoose={(care) => set({ care })}
      />
      <output>{filtered && shelfWords('swims', { shown, total })}</output>
      {filtered && (
        <button type="button" className="quiet" onClick={() => onChange(noFilter)}>
          {shelfWords('showAll')}
        </button>
      )}
    </search>
  );
}
