import { useCallback, useMemo } from 'react';
import { PageBar } from '../ui/page-bar';
import type { Command } from '../ui/command';
import { KeptProblems } from '../documents/kept-messages';
import type { ScreenProps } from '../ui/screen-props';
import { useCommandKeys } from '../ui/use-command-keys';
import { addressOf } from '../ui/use-route';
import { useTip } from '../ui/use-tip';
import { dayWords } from '#core/swim-file/card-words';
import { LibraryTrouble } from '../swims/library-messages';
import { makeId } from '../host/make-id';
import { useKeptList } from '../documents/use-kept-list';
import { trialListing } from './trial-kind';
import { newTrial } from './new-trial';
import { factorWords, trialTitle } from './trial-words';

/** Every trial, the last changed first. */
export function TrialList({ host, say, go }: ScreenProps) {
  const tip = useTip();
  const { listed, trouble, setTrouble, load, remove, restoreLast, canRestore } = useKeptList(
    trialListing,
    host,
    say,
  );
  const begin = useCallback(async () => {
    const trial = newTrial(makeId(), new Date().toISOString());
    const written = await host.call('trial/write', { trial, baseRevision: null });
    if (written.ok) go({ screen: 'trials', ids: [trial.id] });
    else setTrouble(written.error);
  }, [host, go, setTrouble]);
  const commands = useMemo(
    (): readonly Command[] => [
      { id: 'begin', label: 'Begin a trial', keys: ['a'], kind: 'never', run: begin },
      {
        id: 'restore',
        label: 'Bring back the trial last removed',
        keys: ['$mod+z'],
        kind: 'never',
        enabled: canRestore,
        run: restoreLast,
      },
    ],
    [begin, restoreLast, canRestore],
  );
  useCommandKeys('Trials', commands);
  return (
    <div className="sets">
      <PageBar title="Trials">
        <button
          type="button"
          className="primary"
          onClick={() => void begin()}
          title={tip('begin', 'Begin a trial')}
        >
          Begin a trial
        </button>
      </PageBar>
      <main className="sets-list">
        {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
        {listed && <KeptProblems problems={listed.problems} />}
        {listed && listed.trials.length === 0 && <NoTrials onBegin={() => void begin()} />}
        <ul>
          {listed?.trials.map(({ trial }) => (
            <li key={trial.id} className="practice-row">
              <a href={addressOf({ screen: 'trials', ids: [trial.id] })}>
                <strong>{trialTitle(trial.title)}</strong>
                {trial.invented && <em className="invented-tag">invented</em>}
                <span>
                  By {factorWords(trial.factor)} · {trial.rows.length}{' '}
                  {trial.rows.length === 1 ? 'repeat' : 'repeats'} · changed{' '}
                  {dayWords(trial.changedAt.slice(0, 10))}
                </span>
              </a>
              <button
                type="button"
                className="quiet"
                onClick={() =>
                  void remove(
                    trial.id,
                    `“${trialTitle(trial.title)}” is in the bin; its swims are where they were.`,
                  )
                }
              >
                Remove<span className="unseen"> {trialTitle(trial.title)}</span>
              </button>
            </li>
          ))}
        </ul>
      </main>
    </div>
  );
}

function NoTrials({ onBegin }: { readonly onBegin: () => void }) {
  return (
    <section className="empty-shelf">
      <h2>No trial yet</h2>
      <p>A trial asks one question of one swimmer: which head, hip or arm position is faster?</p>
      <ol>
        <li>
          <strong>Plan</strong> the repeats in a mixed order, so that tiredness and learning fall on all
          alike. Count six kick cycles a repeat, never one breath.
        </li>
        <li>
          <strong>Film and mark</strong> each repeat, and say on its card what was tried.
        </li>
        <li>
          <strong>Choose</strong> the swims here. Each difference is called clear, or not yet, and how many
          more repeats would settle it.
        </li>
      </ol>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onBegin}>
          Begin a trial
        </button>
      </div>
    </section>
  );
}
