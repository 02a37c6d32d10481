import { useCallback, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { drillById } from '#core/practice/drill-library';
import { filmingCautions } from '#core/practice/caution';
import type { PracticeItem } from '#core/practice/practice-schema';
import type { Command } from '../app/command';
import { KeptNumber, KeptText } from '../app/kept-field';
import { KeySheetButton } from '../app/key-sheet-button';
import { SaveState } from '../app/save-state';
import { UndoButtons, undoCommands } from '../app/undo-buttons';
import { useCommandKeys } from '../app/use-command-keys';
import { useTip } from '../app/use-tip';
import { makeId } from '../state/make-id';
import { CautionsList } from './cautions-list';
import { DrillChooser } from './drill-chooser';
import { ItemForm } from './item-form';
import { ItemRow } from './item-row';
import { plainItem } from '#core/practice/plain-item';
import { withDrill } from './new-practice';
import type { OpenPractice } from './practice-page';
import { addItem, changeItem, moveItem, removeItem, setFacts } from './practice-steps';
import { savePracticeCard } from './save-practice-card';
import { titleOf } from './sets-words';
import { TotalsPanel } from './totals-panel';

/** Plans one practice: its items on the left, what they add up to on the right. */
export function PracticePlan({ kept, drills, squad, host, say, go }: OpenPractice) {
  const tip = useTip();
  const { document } = kept;
  const practice = useStore(document.store, (state) => state.value);
  const [openId, setOpenId] = useState<string | null>(null);
  const [choosing, setChoosing] = useState(false);
  const [printing, setPrinting] = useState(false);
  const own = drills.book.drills;

  const add = useCallback(
    (shape: (item: PracticeItem) => PracticeItem) => {
      const item = shape(plainItem(makeId(), document.current().poolMetres));
      document.run(addItem(item, openId));
      setOpenId(item.id);
    },
    [document, openId],
  );
  const addPlain = useCallback(() => add((item) => item), [add]);
  const change = useCallback(
    (id: string, said: Partial<PracticeItem>, name: string) => {
      const item = document.current().items.find((each) => each.id === id);
      if (!item) return;
      const step = changeItem({ ...item, ...said }, name);
      if (step.ok) document.run(step.step);
      else say(`That can’t be planned: ${step.why}.`);
    },
    [document, say],
  );
  const print = useCallback(async () => {
    setPrinting(true);
    const saved = await savePracticeCard(host, document.current(), squad, own);
    setPrinting(false);
    say(saved);
  }, [host, document, squad, own, say]);
  const toList = useCallback(() => go({ screen: 'sets', ids: [] }), [go]);
  const toDeck = useCallback(
    () => go({ screen: 'sets', ids: [document.current().id, 'deck'] }),
    [go, document],
  );
  const remove = useCallback(
    (id: string) => {
      document.run(removeItem(id));
      say('The item is off the card.', { label: 'Undo', run: () => void document.undo() });
    },
    [document, say],
  );

  const commands = useMemo((): readonly Command[] => {
    const onItem = (): boolean => openId !== null;
    return [
      { id: 'add', label: 'Add an item', keys: ['a'], kind: 'undoable', run: addPlain },
      { id: 'add-drill', label: 'Add a drill', keys: ['d'], kind: 'view', run: () => setChoosing(true) },
      {
        id: 'up',
        label: 'Move the open item up',
        keys: ['Alt+ArrowUp'],
        kind: 'undoable',
        enabled: onItem,
        run: () => void (openId && document.run(moveItem(openId, -1))),
      },
      {
        id: 'down',
        label: 'Move the open item down',
        keys: ['Alt+ArrowDown'],
        kind: 'undoable',
        enabled: onItem,
        run: () => void (openId && document.run(moveItem(openId, 1))),
      },
      {
        id: 'remove',
        label: 'Take the open item off the card',
        keys: ['Delete'],
        kind: 'undoable',
        enabled: onItem,
        run: () => void (openId && remove(openId)),
      },
      { id: 'print', label: 'Practice card as PDF', keys: ['p'], kind: 'never', run: print },
      { id: 'deck', label: 'On deck', keys: ['l'], kind: 'view', run: toDeck },
      { id: 'list', label: 'All practices', keys: ['Escape'], kind: 'view', run: toList },
      ...undoCommands(document),
    ];
  }, [addPlain, document, openId, print, toDeck, toList, remove]);
  useCommandKeys('Practice', commands);

  const underwater = practice.items.some(
    (item) => item.underwater || drillById(item.drillId ?? '', own)?.underwater === true,
  );
  return (
    <div className="sets plan">
      <header className="bench-bar sets-bar">
        <button type="button" onClick={toList} title={tip('list', 'All practices')}>
          ‹ Sets
        </button>
        <h1 className="unseen">{titleOf(practice)}</h1>
        <KeptText
          className="plan-title"
          aria-label="Title of the practice"
          placeholder="Title of the practice"
          maxLength={200}
          value={practice.title}
          onKeep={(title) => document.run(setFacts('name the practice', { title }))}
        />
        {practice.invented && <em className="invented-tag">invented</em>}
        <SaveState autosave={kept.autosave} what="practice" />
        <UndoButtons document={document} />
        <button
          type="button"
          disabled={printing}
          onClick={() => void print()}
          title={tip('print', 'A page to print')}
        >
          {printing ? 'Making…' : 'Card as PDF'}
        </button>
        <button type="button" className="primary" onClick={toDeck} title={tip('deck', 'Log it')}>
          On deck
        </button>
        <KeySheetButton />
      </header>
      <main className="plan-main">
        <section className="plan-facts" aria-label="About the practice">
          <label>
            Day
            <input
              type="date"
              required
              value={practice.date}
              onChange={(event) =>
                event.target.value && document.run(setFacts('change the day', { date: event.target.value }))
              }
            />
          </label>
          <label>
            Pool, m
            <KeptNumber
              least={5}
              most={200}
              value={practice.poolMetres}
              onKeep={(metres) =>
                metres !== null && document.run(setFacts('change the pool', { poolMetres: metres }))
              }
            />
          </label>
          <fieldset>
            <legend>Who swims</legend>
            {squad.swimmers.length === 0 && <p>Nobody is in the squad yet: name swimmers on the shelf.</p>}
            {squad.swimmers.map(({ id, name }) => (
              <label key={id}>
                <input
                  type="checkbox"
                  checked={practice.swimmerIds.includes(id)}
                  onChange={(event) =>
                    document.run(
                      setFacts('say who swims', {
                        swimmerIds: event.target.checked
                          ? [...practice.swimmerIds, id]
                          : practice.swimmerIds.filter((each) => each !== id),
                      }),
                    )
                  }
                />
                {name}
              </label>
            ))}
          </fieldset>
          <label className="plan-note">
            Note
            <KeptText
              value={practice.note}
              maxLength={4000}
              placeholder="what this practice is for"
              onKeep={(note) => document.run(setFacts('write a note', { note }))}
            />
          </label>
        </section>
        <ol className="plan-items" aria-label="Items">
          {practice.items.map((item, place) => (
            <ItemRow
              key={item.id}
              item={item}
              place={place}
              last={place === practice.items.length - 1}
              drill={drillById(item.drillId ?? '', own)}
              open={item.id === openId}
              onOpen={() => setOpenId(item.id === openId ? null : item.id)}
              onMove={(by) => document.run(moveItem(item.id, by))}
              onCopy={() => {
                const copy = { ...item, id: makeId() };
                document.run(addItem(copy, item.id));
                setOpenId(copy.id);
              }}
              onRemove={() => remove(item.id)}
            >
              <ItemForm
                key={item.id}
                item={item}
                practice={practice}
                squad={squad}
                drills={drills}
                onChange={(said, name) => change(item.id, said, name)}
              />
            </ItemRow>
          ))}
        </ol>
        {practice.items.length === 0 && (
          <p className="plan-empty">
            Nothing planned yet. Begin with short repeats: the metres, the balance and the time add up beside
            the plan.
          </p>
        )}
        <div className="plan-add">
          <button
            type="button"
            className="primary"
            onClick={addPlain}
            title={tip('add', 'Four lengths to begin with')}
          >
            Add an item
          </button>
          <button
            type="button"
            onClick={() => setChoosing(true)}
            title={tip('add-drill', 'From the drill library')}
          >
            Add a drill…
          </button>
        </div>
        <details className="plan-filming">
          <summary>Before filming{underwater ? ', and before going under water' : ''}</summary>
          <CautionsList codes={filmingCautions} />
        </details>
      </main>
      <TotalsPanel
        practice={practice}
        squad={squad}
        onPace={(pace) => document.run(setFacts('change the pace', { pace }))}
      />
      {choosing && (
        <DrillChooser
          drills={drills.all}
          onCancel={() => setChoosing(false)}
          onChoose={(drill) => {
            setChoosing(false);
            add((item) => withDrill(item, drill));
          }}
        />
      )}
    </div>
  );
}
