import { useCallback, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { countsHeld } from '#core/practice/count-held';
import { drillById } from '#core/practice/drill-library';
import { itemCautions } from '#core/practice/item-cautions';
import { itemPhrase } from '#core/practice/item-phrase';
import { patternPhrase } from '#core/practice/stroke-pattern';
import { unfoldItem } from '#core/practice/unfold-item';
import type { Command } from '../app/command';
import { KeySheetButton } from '../app/key-sheet-button';
import { SaveState } from '../app/save-state';
import { UndoButtons, undoCommands } from '../app/undo-buttons';
import { useCommandKeys } from '../app/use-command-keys';
import { CautionsList } from './cautions-list';
import { CountsHeld } from './counts-held';
import { DeckRow } from './deck-row';
import type { OpenPractice } from './practice-page';
import { titleOf } from './sets-words';
import { createStopwatches } from './stopwatches';

/** Logs a practice as it is swum: one repeat at a time, a row a swimmer, everything in one tap. */
export function Deck({ kept, drills, squad, swims, go }: OpenPractice) {
  const { document } = kept;
  const practice = useStore(document.store, (state) => state.value);
  const [itemId, setItemId] = useState<string | null>(practice.items[0]?.id ?? null);
  const [repeat, setRepeat] = useState(0);
  const [watches] = useState(() => createStopwatches(() => performance.now()));
  const [rowAt, setRowAt] = useState(0);
  const item = practice.items.find(({ id }) => id === itemId) ?? practice.items[0] ?? null;
  const planned = useMemo(() => (item ? unfoldItem(item) : []), [item]);
  const now = planned[Math.min(repeat, planned.length - 1)] ?? null;
  const held = useMemo(
    () => new Map(countsHeld(practice).compared.map((each) => [each.entryId, each])),
    [practice],
  );
  const ids = item ? (item.swimmerIds ?? practice.swimmerIds) : [];
  // a practice of nobody in particular is still logged
  const rows: readonly (string | null)[] = ids.length > 0 ? ids : [null];
  useEffect(() => () => watches.clear(), [watches]);

  const step = useCallback(
    (by: -1 | 1) => {
      if (!item) return;
      watches.clear();
      const next = Math.min(repeat, planned.length - 1) + by;
      if (next >= 0 && next < planned.length) return setRepeat(next);
      const other = practice.items[practice.items.indexOf(item) + by];
      if (!other) return;
      setItemId(other.id);
      setRepeat(by > 0 ? 0 : unfoldItem(other).length - 1);
    },
    [item, repeat, planned, practice.items, watches],
  );
  const toPlan = useCallback(() => go({ screen: 'sets', ids: [document.current().id] }), [go, document]);
  const commands = useMemo((): readonly Command[] => {
    const press = (selector: string): void =>
      window.document
        .querySelectorAll<HTMLElement>('.deck-row')
        [rowAt]?.querySelector<HTMLElement>(selector)
        ?.click();
    return [
      { id: 'next', label: 'Next repeat', keys: ['ArrowRight'], kind: 'view', run: () => step(1) },
      { id: 'before', label: 'Repeat before', keys: ['ArrowLeft'], kind: 'view', run: () => step(-1) },
      {
        id: 'row-down',
        label: 'Next swimmer',
        keys: ['ArrowDown'],
        kind: 'view',
        run: () => setRowAt((at) => Math.min(at + 1, rows.length - 1)),
      },
      {
        id: 'row-up',
        label: 'Swimmer before',
        keys: ['ArrowUp'],
        kind: 'view',
        run: () => setRowAt((at) => Math.max(at - 1, 0)),
      },
      {
        id: 'more',
        label: 'One stroke more',
        keys: ['+', 'Shift++', '='],
        kind: 'undoable',
        run: () => press('.count-more'),
      },
      {
        id: 'less',
        label: 'One stroke fewer',
        keys: ['-'],
        kind: 'undoable',
        run: () => press('.count-less'),
      },
      {
        id: 'watch',
        label: 'Start or stop the watch',
        keys: [' '],
        kind: 'undoable',
        run: () => press('.watch'),
      },
      ...(['easy', 'steady', 'strong', 'full'] as const).map(
        (effort, i): Command => ({
          id: `effort-${effort}`,
          label: `Effort ${effort}`,
          keys: [String(i + 1)],
          kind: 'undoable',
          run: () => press(`.effort-${effort}`),
        }),
      ),
      { id: 'plan', label: 'Back to the plan', keys: ['Escape'], kind: 'view', run: toPlan },
      ...undoCommands(document),
    ];
  }, [step, rows.length, rowAt, toPlan, document]);
  useCommandKeys('On deck', commands);

  const drill = item ? drillById(item.drillId ?? '', drills.book.drills) : null;
  const done = (itemIdAsked: string, repeatAsked: number): boolean =>
    practice.log.some((each) => each.itemId === itemIdAsked && each.repeat === repeatAsked);
  return (
    <div className="sets deck">
      <header className="bench-bar sets-bar">
        <button type="button" onClick={toPlan} title="Back to the plan (Esc)">
          ‹ Plan
        </button>
        <h1>{titleOf(practice)}</h1>
        {practice.invented && <em className="invented-tag">invented</em>}
        <SaveState autosave={kept.autosave} what="practice" />
        <UndoButtons document={document} />
        <KeySheetButton />
      </header>
      <main>
        {!item || !now ? (
          <p className="plan-empty">Nothing is planned yet. Go back to the plan and add an item.</p>
        ) : (
          <>
            <label className="deck-item">
              Item
              <select
                value={item.id}
                onChange={(event) => {
                  watches.clear();
                  setItemId(event.target.value);
                  setRepeat(0);
                }}
              >
                {practice.items.map((each, i) => (
                  <option key={each.id} value={each.id}>
                    {i + 1}. {itemPhrase(each, drillById(each.drillId ?? '', drills.book.drills))}
                  </option>
                ))}
              </select>
            </label>
            <div className="deck-repeats">
              <button type="button" className="deck-step" onClick={() => step(-1)} title="Repeat before (←)">
                ‹<span className="unseen">Repeat before</span>
              </button>
              <p aria-live="polite">
                <strong>
                  Repeat {now.repeat + 1} of {planned.length}
                </strong>
                <span>
                  {now.distanceMetres} m{now.count !== null ? ` · ${now.count} strokes` : ''}
                  {now.pattern ? ` · ${patternPhrase(now.pattern.runs)}` : ''}
                  {item.effort ? ` · ${item.effort}` : ''}
                </span>
                {item.note !== '' && <span>{item.note}</span>}
              </p>
              <button type="button" className="deck-step" onClick={() => step(1)} title="Next repeat (→)">
                ›<span className="unseen">Next repeat</span>
              </button>
            </div>
            <div className="deck-tools">
              <ol className="deck-dots" aria-label="Repeats">
                {planned.map((each) => (
                  <li key={each.repeat}>
                    <button
                      type="button"
                      aria-current={each.repeat === now.repeat ? 'step' : undefined}
                      onClick={() => {
                        watches.clear();
                        setRepeat(each.repeat);
                      }}
                    >
                      {each.repeat + 1}
                      {done(item.id, each.repeat) ? ' ✓' : ''}
                    </button>
                  </li>
                ))}
              </ol>
              {rows.length > 1 && (
                <button
                  type="button"
                  className="deck-start-all"
                  onClick={() => {
                    for (const id of rows) watches.start(id ?? '');
                  }}
                >
                  Start every watch
                </button>
              )}
            </div>
            <div className="deck-rows">
              {rows.map((swimmerId, at) => (
                <DeckRow
                  key={`${item.id} ${now.repeat} ${swimmerId}`}
                  rowKey={{ itemId: item.id, repeat: now.repeat, swimmerId }}
                  current={at === rowAt}
                  name={squad.swimmers.find((each) => each.id === swimmerId)?.name ?? 'Whoever swims'}
                  item={item}
                  planned={now}
                  practice={practice}
                  document={document}
                  watches={watches}
                  held={held}
                  swims={swims}
                />
              ))}
            </div>
            <CautionsList codes={itemCautions(item, drill).cautions} />
            <CountsHeld practice={practice} squad={squad} />
          </>
        )}
      </main>
    </div>
  );
}
