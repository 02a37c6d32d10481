import { useCallback, useMemo } from 'react';
import type { Practice } from '#core/practice/practice-schema';
import { practiceTotals } from '#core/practice/practice-totals';
import { unfoldItem } from '#core/practice/unfold-item';
import { PageBar } from '../ui/page-bar';
import type { Command } from '../ui/command';
import { KeptProblems } from '../documents/kept-messages';
import type { ScreenProps } from '../ui/screen-props';
import { useCommandKeys } from '../ui/use-command-keys';
import { addressOf } from '../ui/use-route';
import { useTip } from '../ui/use-tip';
import { dayWords } from '#core/swim-file/card-words';
import { isoDayOf } from '../card/remembered-card';
import { LibraryTrouble } from '../swims/library-messages';
import { makeId } from '../host/make-id';
import { useKeptList } from '../documents/use-kept-list';
import { practiceListing } from './practice-kind';
import { newPractice, planAgain } from './new-practice';
import { metresWords, titleOf } from './sets-words';
import { setsWords } from '#core/words/sets';
import { rich } from '../ui/rich';

/** Every practice, the latest first; from here one is planned, planned again, or taken away. */
export function PracticeList({ host, say, go }: ScreenProps) {
  const tip = useTip();
  const { listed, trouble, setTrouble, load, remove, restoreLast, canRestore } = useKeptList(
    practiceListing,
    host,
    say,
  );

  const open = useCallback((id: string) => go({ screen: 'sets', ids: [id] }), [go]);
  const keep = useCallback(
    async (practice: Practice) => {
      const written = await host.call('practice/write', { practice, baseRevision: null });
      if (written.ok) open(practice.id);
      else setTrouble(written.error);
    },
    [host, open, setTrouble],
  );
  const plan = useCallback(async () => {
    const library = await host.call('library/open', {});
    const swimmers = library.ok ? library.value.squad.swimmers.map(({ id }) => id) : [];
    const now = new Date();
    await keep(newPractice(makeId(), isoDayOf(now.getTime()), now.toISOString(), swimmers.slice(0, 200)));
  }, [host, keep]);
  const toDrills = useCallback(() => go({ screen: 'sets', ids: ['drills'] }), [go]);
  const commands = useMemo(
    (): readonly Command[] => [
      { id: 'plan', label: setsWords('planPractice'), keys: ['a'], kind: 'never', run: plan },
      { id: 'drills', label: setsWords('drills'), keys: ['d'], kind: 'view', run: toDrills },
      {
        id: 'restore',
        label: setsWords('bringBackPractice'),
        keys: ['$mod+z'],
        kind: 'never',
        enabled: canRestore,
        run: restoreLast,
      },
    ],
    [plan, toDrills, restoreLast, canRestore],
  );
  useCommandKeys(setsWords('sets2'), commands);

  return (
    <div className="sets">
      <PageBar title={setsWords('sets2')}>
        <button type="button" onClick={toDrills} title={tip('drills', setsWords('drillsStrokePatterns'))}>
          {setsWords('drills')}
        </button>
        <button
          type="button"
          className="primary"
          onClick={() => void plan()}
          title={tip('plan', setsWords('planPractice'))}
        >
          {setsWords('planPractice')}
        </button>
      </PageBar>
      <main className="sets-list">
        {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
        {listed && <KeptProblems problems={listed.problems} />}
        {listed && listed.practices.length === 0 && <NoPractices onPlan={() => void plan()} />}
        <ul>
          {listed?.practices.map(({ practice }) => (
            <PracticeRow
              key={practice.id}
              practice={practice}
              onAgain={() => {
                const now = new Date();
                void keep(planAgain(practice, makeId, isoDayOf(now.getTime()), now.toISOString()));
              }}
              onRemove={() => void remove(practice.id, setsWords('bin', { titleOf: titleOf(practice) }))}
            />
          ))}
        </ul>
      </main>
    </div>
  );
}

interface RowProps {
  readonly practice: Practice;
  readonly onAgain: () => void;
  readonly onRemove: () => void;
}

function PracticeRow({ practice, onAgain, onRemove }: RowProps) {
  const totals = practiceTotals(practice, null, 'planned');
  const repeats = practice.items.reduce((sum, item) => sum + unfoldItem(item).length, 0);
  const title = titleOf(practice);
  return (
    <li className="practice-row">
      <a href={addressOf({ screen: 'sets', ids: [practice.id] })}>
        <strong>{title}</strong>
        {practice.invented && <em className="invented-tag">{setsWords('invented')}</em>}
        <span>
          {setsWords('repeatsRepeats', {
            repeats,
            day: dayWords(practice.date),
            metres: metresWords(totals.metres),
          })}
          {totals.aidedMetres > 0 &&
            (totals.matched
              ? ` ${setsWords('aidsMatchedWithout')}`
              : ` ${setsWords('withoutAidsMissing', { metres: metresWords(totals.shortfallMetres) })}`)}
          {practice.log.length > 0 ? ` ${setsWords('logged', { log: practice.log.length })}` : ''}
        </span>
      </a>
      <a className="button-like" href={addressOf({ screen: 'sets', ids: [practice.id, 'deck'] })}>
        {rich(
          setsWords.parts('deckTitle', { title, span: (inside) => <span className="unseen">{inside}</span> }),
        )}
      </a>
      <button type="button" onClick={onAgain} title={setsWords('samePlanToday')}>
        {rich(
          setsWords.parts('planAgain', { title, span: (inside) => <span className="unseen">{inside}</span> }),
        )}
      </button>
      <button type="button" className="quiet" onClick={onRemove}>
        {rich(
          setsWords.parts('removeTitle', {
            title,
            span: (inside) => <span className="unseen">{inside}</span>,
          }),
        )}
      </button>
    </li>
  );
}

function NoPractices({ onPlan }: { readonly onPlan: () => void }) {
  return (
    <section className="empty-shelf">
      <h2>{setsWords('noPracticeYet')}</h2>
      <ol>
        <li>{rich(setsWords.parts('planShortRepeats', { b: (inside) => <strong>{inside}</strong> }))}</li>
        <li>{rich(setsWords.parts('printCardOrTake', { b: (inside) => <strong>{inside}</strong> }))}</li>
        <li>{rich(setsWords.parts('lookWhetherCount', { b: (inside) => <strong>{inside}</strong> }))}</li>
      </ol>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onPlan}>
          {setsWords('planPractice')}
        </button>
      </div>
    </section>
  );
}
