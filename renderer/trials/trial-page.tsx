import { useMemo } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { ScreenProps } from '../app/screens';
import { useDrills } from '../sets/use-drills';
import { useLibrary } from '../shelf/use-library';
import { useKept } from '../state/use-kept';
import { OpenTrial } from './open-trial';
import { trialKind } from './trial-kind';

interface Props extends Pick<ScreenProps, 'host' | 'say' | 'go'> {
  readonly id: string;
}

/** Opens a trial, with the squad, the drills and the swims it is about. */
export function TrialPage({ id, host, say, go }: Props) {
  const opening = useKept(trialKind, host, id, say);
  const drills = useDrills(host);
  const { library } = useLibrary(host);
  const swims = useMemo(() => library?.swims ?? [], [library]);
  if (opening.state === 'open')
    return (
      <OpenTrial
        kept={opening.kept}
        squad={library?.squad ?? null}
        swims={swims}
        own={drills.book.drills}
        host={host}
        say={say}
        go={go}
      />
    );
  if (opening.state === 'opening') return <output className="sets-opening">Opening the trial…</output>;
  const { what, todo } = errorWords(opening.error);
  return (
    <main className="sets-failed">
      <div className="message message-trouble" role="alert">
        <h1>{what}</h1>
        <p>{todo}</p>
        <div className="dialog-foot">
          <button type="button" onClick={opening.again}>
            Try again
          </button>
          <button type="button" onClick={() => go({ screen: 'trials', ids: [] })}>
            All trials
          </button>
        </div>
      </div>
    </main>
  );
}
