import { useCallback, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { drillById } from '#core/practice/drill-library';
import { filmingCautions } from '#core/practice/caution';
import type { PracticeItem } from '#core/practice/practice-schema';
import { CommandButton } from '../ui/command-button';
import { useCommandKeys } from '../ui/use-command-keys';
import { makeId } from '../host/make-id';
import { CautionsList } from './cautions-list';
import { DrillChooser } from './drill-chooser';
import { ItemForm } from './item-form';
import { ItemRow } from './item-row';
import { plainItem } from '#core/practice/plain-item';
import { withDrill } from './new-practice';
import { PlanBar } from './plan-bar';
import { planCommands } from './plan-commands';
import { PlanFacts } from './plan-facts';
import type { OpenPractice } from './practice-page';
import { addItem, changeItem, moveItem, removeItem, setFacts } from './practice-steps';
import { savePracticeCard } from './save-practice-card';
import { TotalsPanel } from './totals-panel';
import { setsWords } from '#core/words/sets';

/** Plans one practice: its items on the left, what they add up to on the right. */
export function PracticePlan({ kept, drills, squad, host, say, go }: OpenPractice) {
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
      else say(setsWords('cantPlanned', { why: step.why }));
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
      say(setsWords('itemOffCard'), { label: setsWords('undo'), run: () => void document.undo() });
    },
    [document, say],
  );

  const toDrills = useCallback(() => setChoosing(true), []);
  const commands = useMemo(
    () => planCommands({ document, openId, addPlain, addDrill: toDrills, remove, print, toDeck, toList }),
    [addPlain, document, openId, print, toDeck, toDrills, toList, remove],
  );
  useCommandKeys(setsWords('practice2'), commands);

  const underwater = practice.items.some(
    (item) => item.underwater || drillById(item.drillId ?? '', own)?.underwater === true,
  );
  return (
    <div className="sets plan">
      <PlanBar kept={kept} practice={practice} printing={printing} />
      <main className="plan-main">
        <PlanFacts practice={practice} squad={squad} document={document} />
        <ol className="plan-items" aria-label={setsWords('items')}>
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
        {practice.items.length === 0 && <p className="plan-empty">{setsWords('nothingPlannedYetBegin')}</p>}
        <div className="plan-add">
          <CommandButton command="add" tip={setsWords('fourLengthsBegin')} className="primary">
            {setsWords('addItem')}
          </CommandButton>
          <CommandButton command="add-drill" tip={setsWords('fromDrillLibrary')}>
            {setsWords('addDrillMore')}
          </CommandButton>
        </div>
        <details className="plan-filming">
          <summary>{underwater ? setsWords('beforeFilmingBefore') : setsWords('beforeFilming')}</summary>
          <CautionsList codes={filmingCautions} />
        </details>
      </main>
      <TotalsPanel
        practice={practice}
        squad={squad}
        onPace={(pace) => document.run(setFacts(setsWords('changePace'), { pace }))}
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
