import { useCallback, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { countsHeld } from '#core/practice/count-held';
import { drillById } from '#core/practice/drill-library';
import { itemCautions } from '#core/practice/item-cautions';
import { itemPhrase } from '#core/practice/item-phrase';
import { CommandButton } from '../ui/command-button';
import { KeySheetButton } from '../ui/key-sheet-button';
import { SaveState } from '../documents/save-state';
import { UndoButtons } from '../ui/undo-buttons';
import { useCommandKeys } from '../ui/use-command-keys';
import { CautionsList } from './cautions-list';
import { CountsHeld } from './counts-held';
import { deckCommands } from './deck-commands';
import { DeckRepeats } from './deck-repeats';
import { DeckRow } from './deck-row';
import { type DeckRepeat, logOnDeck } from './log-on-deck';
import type { OpenPractice } from './practice-page';
import { titleOf } from './sets-words';
import { createStopwatches } from './stopwatches';
import { useDeckPlace } from './use-deck-place';
import { setsWords } from '#core/words/sets';

/** Logs a practice as it is swum: one repeat at a time, a row a swimmer, everything in one tap. */
export function Deck({ kept, drills, squad, swims, go }: OpenPractice) {
  const { document } = kept;
  const practice = useStore(document.store, (state) => state.value);
  const [watches] = useState(() => createStopwatches(() => performance.now()));
  const [rowAt, setRowAt] = useState(0);
  const { at, step, toItem, toRepeat } = useDeckPlace(practice, watches);
  const held = useMemo(
    () => new Map(countsHeld(practice).compared.map((each) => [each.entryId, each])),
    [practice],
  );
  useEffect(() => () => watches.clear(), [watches]);

  const rows = useMemo((): readonly DeckRepeat[] => {
    if (!at) return [];
    const { item, now: planned } = at;
    const ids = item.swimmerIds ?? practice.swimmerIds;
    // a practice of nobody in particular is still logged
    return (ids.length > 0 ? ids : [null]).map((swimmerId) => ({
      rowKey: { itemId: item.id, repeat: planned.repeat, swimmerId },
      name: squad.swimmers.find((each) => each.id === swimmerId)?.name ?? setsWords('whoeverSwims'),
      item,
      planned,
      document,
      watches,
    }));
  }, [at, practice.swimmerIds, squad, document, watches]);
  const toRow = useCallback(
    (by: -1 | 1) => setRowAt((row) => Math.max(0, Math.min(row + by, rows.length - 1))),
    [rows.length],
  );
  const toPlan = useCallback(() => go({ screen: 'sets', ids: [document.current().id] }), [go, document]);
  const spoken = rows[rowAt];
  const commands = useMemo(
    () => deckCommands({ step, toRow, toPlan, log: spoken ? logOnDeck(spoken) : null, document }),
    [step, toRow, toPlan, spoken, document],
  );
  useCommandKeys(setsWords('deck'), commands);

  return (
    <div className="sets deck">
      <header className="bench-bar sets-bar">
        <CommandButton command="plan">{setsWords('plan')}</CommandButton>
        <h1>{titleOf(practice)}</h1>
        {practice.invented && <em className="invented-tag">{setsWords('invented')}</em>}
        <SaveState autosave={kept.autosave} what={setsWords('practice')} />
        <UndoButtons document={document} />
        <KeySheetButton />
      </header>
      <main>
        {!at ? (
          <p className="plan-empty">{setsWords('nothingPlannedYet')}</p>
        ) : (
          <>
            <label className="deck-item">
              {setsWords('item')}
              <select value={at.item.id} onChange={(event) => toItem(event.target.value)}>
                {practice.items.map((each, i) => (
                  <option key={each.id} value={each.id}>
                    {i + 1}. {itemPhrase(each, drillById(each.drillId ?? '', drills.book.drills))}
                  </option>
                ))}
              </select>
            </label>
            <DeckRepeats
              practice={practice}
              at={at}
              toRepeat={toRepeat}
              onStartAll={
                rows.length > 1
                  ? () => {
                      for (const { rowKey } of rows) watches.start(rowKey.swimmerId ?? '');
                    }
                  : null
              }
            />
            <div className="deck-rows">
              {rows.map((of, row) => (
                <DeckRow
                  key={`${of.rowKey.itemId} ${of.rowKey.repeat} ${of.rowKey.swimmerId}`}
                  of={of}
                  current={row === rowAt}
                  practice={practice}
                  held={held}
                  swims={swims}
                />
              ))}
            </div>
            <CautionsList
              codes={itemCautions(at.item, drillById(at.item.drillId ?? '', drills.book.drills)).cautions}
            />
            <CountsHeld practice={practice} squad={squad} />
          </>
        )}
      </main>
    </div>
  );
}
