import { useMemo, useState } from 'react';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { depths, headPositions, hipPositions } from '#core/swim-file/condition-tags';
import type { Squad } from '#core/swim-file/squad-schema';
import { armPositions } from '#core/swim-file/swim-schema';
import { Dialog } from '../ui/dialog';
import { aidsWords, armWords, cardWords, conditionWords, dayWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';
import { trialsWords } from '#core/words/trials';

interface Props {
  readonly swims: readonly SwimSummary[];
  /** Swims the trial has already. */
  readonly have: readonly string[];
  readonly squad: Squad;
  readonly onAdd: (swims: readonly SwimSummary[]) => void;
  readonly onCancel: () => void;
}

type Filter = Readonly<Record<'swimmer' | 'head' | 'hips' | 'depth' | 'arms' | 'aids' | 'tag', string>>;
const everything: Filter = { swimmer: '', head: '', hips: '', depth: '', arms: '', aids: '', tag: '' };

/** Whether a swim's card is as asked; empty asks for nothing. */
export function fitsFilter({ card }: Pick<SwimSummary, 'card'>, filter: Filter): boolean {
  const { conditions } = card;
  return (
    (filter.swimmer === '' || card.swimmerId === filter.swimmer) &&
    (['head', 'hips', 'depth'] as const).every((of) => filter[of] === '' || conditions[of] === filter[of]) &&
    (filter.arms === '' || card.arms === filter.arms) &&
    (filter.aids === '' || (filter.aids === 'with') === card.aids.length > 0) &&
    (filter.tag === '' || conditions.free.includes(filter.tag))
  );
}

/** Chooses swims into a trial by what their cards say. */
export function AddSwims({ swims, have, squad, onAdd, onCancel }: Props) {
  const [filter, setFilter] = useState(everything);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const open = useMemo(() => swims.filter(({ id }) => !have.includes(id)), [swims, have]);
  const shown = useMemo(
    () =>
      open
        .filter((swim) => fitsFilter(swim, filter))
        .sort((a, b) => b.card.date.localeCompare(a.card.date) || (a.id < b.id ? -1 : 1)),
    [open, filter],
  );
  const tags = [...new Set(open.flatMap(({ card }) => card.conditions.free))].sort();
  const set = (said: Partial<Filter>): void => setFilter({ ...filter, ...said });
  const all = shown.length > 0 && shown.every(({ id }) => chosen.includes(id));
  return (
    <Dialog title={trialsWords('chooseSwims')} wide onCancel={onCancel}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          onAdd(swims.filter(({ id }) => chosen.includes(id)));
        }}
      >
        <div className="add-filters">
          <Choice
            label={trialsWords('swimmer')}
            value={filter.swimmer}
            choices={squad.swimmers.map(({ id, name }) => [id, name])}
            onPick={(swimmer) => set({ swimmer })}
          />
          <Choice
            label={trialsWords('head')}
            value={filter.head}
            choices={headPositions.map((each) => [each, conditionWords('head', each)])}
            onPick={(head) => set({ head })}
          />
          <Choice
            label={trialsWords('hips')}
            value={filter.hips}
            choices={hipPositions.map((each) => [each, conditionWords('hips', each)])}
            onPick={(hips) => set({ hips })}
          />
          <Choice
            label={trialsWords('depth')}
            value={filter.depth}
            choices={depths.map((each) => [each, conditionWords('depth', each)])}
            onPick={(depth) => set({ depth })}
          />
          <Choice
            label={trialsWords('arms')}
            value={filter.arms}
            choices={armPositions.map((each) => [each, armWords[each]])}
            onPick={(arms) => set({ arms })}
          />
          <Choice
            label={trialsWords('aids')}
            value={filter.aids}
            choices={[
              ['without', trialsWords('withoutAids')],
              ['with', trialsWords('aids2')],
            ]}
            onPick={(aids) => set({ aids })}
          />
          {tags.length > 0 && (
            <Choice
              label={trialsWords('tag')}
              value={filter.tag}
              choices={tags.map((each) => [each, each])}
              onPick={(tag) => set({ tag })}
            />
          )}
        </div>
        {shown.length === 0 && <p>{trialsWords('noSwimNotTrial')}</p>}
        {shown.length > 0 && (
          <label className="tick add-all">
            <input
              type="checkbox"
              checked={all}
              onChange={(event) => {
                const ids = shown.map(({ id }) => id);
                setChosen(
                  event.target.checked
                    ? [...new Set([...chosen, ...ids])]
                    : chosen.filter((each) => !ids.includes(each)),
                );
              }}
            />
            {trialsWords('allShown', { shown: shown.length })}
          </label>
        )}
        <ul className="add-list">
          {shown.map(({ id, card, eventCount }) => (
            <li key={id}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={chosen.includes(id)}
                  onChange={(event) =>
                    setChosen(event.target.checked ? [...chosen, id] : chosen.filter((each) => each !== id))
                  }
                />
                <span>
                  {cardWords(card).title}
                  <small>
                    {[
                      dayWords(card.date),
                      aidsWords(card.aids),
                      ...(['head', 'hips', 'depth'] as const).flatMap((of) =>
                        card.conditions[of] === null
                          ? []
                          : [`${of} ${conditionWords(of, card.conditions[of] ?? '')}`],
                      ),
                      ...card.conditions.free,
                      trialsWords('events', { eventCount }),
                    ].join(' · ')}
                  </small>
                </span>
              </label>
            </li>
          ))}
        </ul>
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={chosen.length === 0}>
            {trialsWords('putIntoTrial', {
              chosen: chosen.length === 0 ? trialsWords('them') : chosen.length,
            })}
          </button>
          <button type="button" onClick={onCancel}>
            {trialsWords('leave')}
          </button>
        </footer>
      </form>
    </Dialog>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly onPick: (value: string) => void;
}

function Choice({ label, value, choices, onPick }: ChoiceProps) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onPick(event.target.value)}>
        <option value="">{trialsWords('any')}</option>
        {choices.map(([each, words]) => (
          <option key={each} value={each}>
            {sentence(words)}
          </option>
        ))}
      </select>
    </label>
  );
}
