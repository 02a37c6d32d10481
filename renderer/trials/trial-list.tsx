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
import { trialsWords } from '#core/words/trials';
import { rich } from '../ui/rich';

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
      { id: 'begin', label: trialsWords('beginTrial'), keys: ['a'], kind: 'never', run: begin },
      {
        id: 'restore',
        label: trialsWords('bringBackTrial'),
        keys: ['$mod+z'],
        kind: 'never',
        enabled: canRestore,
        run: restoreLast,
      },
    ],
    [begin, restoreLast, canRestore],
  );
  useCommandKeys(trialsWords('trials2'), commands);
  return (
    <div className="sets">
      <PageBar title={trialsWords('trials2')}>
        <button
          type="button"
          className="primary"
          onClick={() => void begin()}
          title={tip('begin', trialsWords('beginTrial'))}
        >
          {trialsWords('beginTrial')}
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
                {trial.invented && <em className="invented-tag">{trialsWords('invented')}</em>}
                <span>
                  {trialsWords('repeatsChanged', {
                    rows: trial.rows.length,
                    factor: factorWords(trial.factor),
                    day: dayWords(trial.changedAt.slice(0, 10)),
                  })}
                </span>
              </a>
              <button
                type="button"
                className="quiet"
                onClick={() =>
                  void remove(
                    trial.id,
                    trialsWords('binItsSwimsWhere', { trialTitle: trialTitle(trial.title) }),
                  )
                }
              >
                {rich(
                  trialsWords.parts('remove', {
                    trialTitle: trialTitle(trial.title),
                    span: (inside) => <span className="unseen">{inside}</span>,
                  }),
                )}
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
      <h2>{trialsWords('noTrialYet')}</h2>
      <p>{trialsWords('trialAsksOne')}</p>
      <ol>
        <li>{rich(trialsWords.parts('planRepeatsMixed', { b: (inside) => <strong>{inside}</strong> }))}</li>
        <li>{rich(trialsWords.parts('filmMarkEach', { b: (inside) => <strong>{inside}</strong> }))}</li>
        <li>{rich(trialsWords.parts('chooseSwimsHere', { b: (inside) => <strong>{inside}</strong> }))}</li>
      </ol>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onBegin}>
          {trialsWords('beginTrial')}
        </button>
      </div>
    </section>
  );
}
