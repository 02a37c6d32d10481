import { useCallback, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Drill } from '#core/practice/drill-schema';
import { trialContrasts } from '#core/practice/trial-contrast';
import { type TrialRow, trialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import { trialWarnings, trialWarningWords } from '#core/practice/trial-warning';
import { emptySquad } from '#core/swim-file/squad-file';
import type { Squad } from '#core/swim-file/squad-schema';
import type { Command } from '../ui/command';
import type { ScreenProps } from '../ui/screen-props';
import { undoCommands } from '../ui/undo-buttons';
import { useCommandKeys } from '../ui/use-command-keys';
import { makeId } from '../host/make-id';
import type { OpenKept } from '../documents/open-kept';
import { AddSwims } from './add-swims';
import { movedRow, withSwims } from './new-trial';
import { practiceOfTrial } from './practice-of-trial';
import { saveTrialCsv, saveTrialPage } from './save-trial';
import { TrialBar } from './trial-bar';
import { TrialContrastTable } from './trial-contrast-table';
import { TrialOrder } from './trial-order';
import { TrialPlots } from './trial-plots';
import { TrialQuestion } from './trial-question';
import { TrialTable } from './trial-table';
import { useCoachDamage } from '../swims/use-coach-damage';
import { useSwimReadings } from './use-swim-readings';
import { trialsWords } from '#core/words/trials';

interface Props extends ScreenProps {
  readonly kept: OpenKept<Trial>;
  /** Null until the library is read. */
  readonly squad: Squad | null;
  readonly swims: readonly SwimSummary[];
  readonly own: readonly Drill[];
}

/** One trial: the question, its repeats, the picture of them, what differs, and the order they are swum in. */
export function OpenTrial({ kept, squad: known, swims, own, host, say, go }: Props) {
  const { document } = kept;
  const trial = useStore(document.store, (state) => state.value);
  const squad = known ?? emptySquad;
  const [adding, setAdding] = useState(false);
  const swimIds = useMemo(() => trial.rows.map(({ swimId }) => swimId), [trial.rows]);
  const read = useSwimReadings(host, swimIds, known);
  useCoachDamage(host, say);
  const rows = useMemo(
    (): readonly TrialRow[] =>
      [...trial.rows]
        .sort((a, b) => a.order - b.order)
        .flatMap(({ swimId, order, tags }) => {
          const found = read.swims.get(swimId);
          return found?.ok ? [trialRow(found.swim, order, tags, found.readings)] : [];
        }),
    [trial.rows, read.swims],
  );
  const contrasts = useMemo(
    () =>
      trial.readings.flatMap((id) => {
        const found = trialContrasts(rows, trial.factor, id);
        return found.ok ? found.contrasts : [];
      }),
    [rows, trial.factor, trial.readings],
  );
  const change = useCallback(
    (said: Partial<Trial>, name: string): void => {
      document.run({ name, change: (draft) => void Object.assign(draft, structuredClone(said)) });
    },
    [document],
  );
  const csv = useCallback(async () => {
    say(await saveTrialCsv(host, document.current(), rows));
  }, [host, document, rows, say]);
  const page = useCallback(async () => {
    say(await saveTrialPage(host, { trial: document.current(), rows, contrasts, squad, own }));
  }, [host, document, rows, contrasts, squad, own, say]);
  const practise = useCallback(async () => {
    const made = practiceOfTrial(document.current(), { rows, swims, squad, own }, makeId, new Date());
    if (!made) {
      say(trialsWords('drawOrderFirst'));
      return;
    }
    const written = await host.call('practice/write', { practice: made, baseRevision: null });
    if (written.ok) go({ screen: 'sets', ids: [made.id] });
    else say(errorWords(written.error).what);
  }, [host, document, rows, swims, squad, own, say, go]);
  const toList = useCallback(() => go({ screen: 'trials', ids: [] }), [go]);
  const commands = useMemo(
    (): readonly Command[] => [
      { id: 'add', label: trialsWords('chooseSwims'), keys: ['a'], kind: 'view', run: () => setAdding(true) },
      { id: 'csv', label: trialsWords('tableCsv'), keys: ['c'], kind: 'never', run: csv },
      { id: 'page', label: trialsWords('onePagePdf'), keys: ['p'], kind: 'never', run: page },
      {
        id: 'practice',
        label: trialsWords('putPlannedOrder'),
        keys: ['s'],
        kind: 'never',
        run: practise,
      },
      { id: 'list', label: trialsWords('allTrials'), keys: ['Escape'], kind: 'view', run: toList },
      ...undoCommands(document),
    ],
    [csv, page, practise, toList, document],
  );
  useCommandKeys(trialsWords('trial'), commands);
  const warnings = trialWarnings(rows, trial.factor);
  return (
    <div className="sets trial">
      <TrialBar kept={kept} trial={trial} onTitle={(title) => change({ title }, trialsWords('nameTrial'))} />
      <main className="trial-main">
        <TrialQuestion trial={trial} rows={rows} onChange={change} />
        {read.waiting > 0 && (
          <output>{trialsWords('readingSwims', { waiting: read.waiting, rows: trial.rows.length })}</output>
        )}
        {warnings.length > 0 && (
          <ul className="message trial-warnings" aria-label={trialsWords('whatMayMislead')}>
            {warnings.map((warning) => (
              <li key={warning.code}>{trialWarningWords(warning)}</li>
            ))}
          </ul>
        )}
        {/* the answer before what it rests on */}
        <TrialContrastTable trial={trial} rows={rows} contrasts={contrasts} squad={squad} own={own} />
        <TrialTable
          trial={trial}
          rows={rows}
          read={read.swims}
          squad={squad}
          own={own}
          swims={swims}
          onChoose={() => setAdding(true)}
          onTags={(swimId, tags) =>
            change(
              { rows: trial.rows.map((each) => (each.swimId === swimId ? { ...each, tags } : each)) },
              trialsWords('sayWhatTried'),
            )
          }
          onMove={(swimId, by) =>
            change({ rows: movedRow(trial.rows, swimId, by) }, trialsWords('changeOrder'))
          }
          onRemove={(swimId) => {
            change(
              { rows: trial.rows.filter((each) => each.swimId !== swimId) },
              trialsWords('leaveRepeatOut'),
            );
            say(trialsWords('repeatLeftOut'), {
              label: trialsWords('undo'),
              run: () => void document.undo(),
            });
          }}
        />
        <TrialPlots trial={trial} rows={rows} own={own} squad={squad} />
        <TrialOrder
          trial={trial}
          rows={rows}
          own={own}
          onChange={change}
          onPractice={() => void practise()}
        />
      </main>
      {adding && (
        <AddSwims
          swims={swims}
          have={swimIds}
          squad={squad}
          onCancel={() => setAdding(false)}
          onAdd={(chosen) => {
            setAdding(false);
            const invented = trial.rows.length === 0 && chosen.every(({ card }) => card.invented);
            change(
              { rows: withSwims(trial.rows, chosen), invented: trial.invented || invented },
              trialsWords('chooseSwims2'),
            );
          }}
        />
      )}
    </div>
  );
}
