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
      { id: 'plan', label: 'Plan a practice', keys: ['a'], kind: 'never', run: plan },
      { id: 'drills', label: 'Drills', keys: ['d'], kind: 'view', run: toDrills },
      {
        id: 'restore',
        label: 'Bring back the practice last removed',
        keys: ['$mod+z'],
        kind: 'never',
        enabled: canRestore,
        run: restoreLast,
      },
    ],
    [plan, toDrills, restoreLast, canRestore],
  );
  useCommandKeys('Sets', commands);

  return (
    <div className="sets">
      <PageBar title="Sets">
        <button type="button" onClick={toDrills} title={tip('drills', 'Drills and stroke patterns')}>
          Drills
        </button>
        <button
          type="button"
          className="primary"
          onClick={() => void plan()}
          title={tip('plan', 'Plan a practice')}
        >
          Plan a practice
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
              onRemove={() => void remove(practice.id, `“${titleOf(practice)}” is in the bin.`)}
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
        {practice.invented && <em className="invented-tag">invented</em>}
        <span>
          {dayWords(practice.date)} · {repeats} {repeats === 1 ? 'repeat' : 'repeats'} ·{' '}
          {metresWords(totals.metres)}
          {totals.aidedMetres > 0 &&
            (totals.matched
              ? ' · aids matched without'
              : ` · ${metresWords(totals.shortfallMetres)} without aids missing`)}
          {practice.log.length > 0 ? ` · ${practice.log.length} logged` : ''}
        </span>
      </a>
      <a className="button-like" href={addressOf({ screen: 'sets', ids: [practice.id, 'deck'] })}>
        On deck<span className="unseen"> with {title}</span>
      </a>
      <button type="button" onClick={onAgain} title="The same plan for today, nothing logged">
        Plan again<span className="unseen">: {title}</span>
      </button>
      <button type="button" className="quiet" onClick={onRemove}>
        Remove<span className="unseen"> {title}</span>
      </button>
    </li>
  );
}

function NoPractices({ onPlan }: { readonly onPlan: () => void }) {
  return (
    <section className="empty-shelf">
      <h2>No practice yet</h2>
      <ol>
        <li>
          <strong>Plan</strong> short repeats: so many 25s or 50s, plain or a drill, with the kick between
          them. Metres with and without aids, left and right, and the time add up as you write.
        </li>
        <li>
          <strong>Print</strong> the card, or take this window to the deck and log count, time and effort of
          each repeat with large buttons.
        </li>
        <li>
          <strong>Look</strong> whether the count held at full effort, and tie the film of a repeat to it.
        </li>
      </ol>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onPlan}>
          Plan a practice
        </button>
      </div>
    </section>
  );
}
