import { useMemo } from 'react';
import { KeptTrouble } from '../documents/kept-messages';
import type { ScreenProps } from '../ui/screen-props';
import { useDrills } from '../sets/use-drills';
import { useLibrary } from '../swims/use-library';
import { useKept } from '../documents/use-kept';
import { OpenTrial } from './open-trial';
import { trialKind } from './trial-kind';
import { trialsWords } from '#core/words/trials';

interface Props extends ScreenProps {
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
  if (opening.state === 'opening')
    return <output className="sets-opening">{trialsWords('openingTrial')}</output>;
  return (
    <KeptTrouble
      error={opening.error}
      onAgain={opening.again}
      onLeave={() => go({ screen: 'trials', ids: [] })}
      leaveWords={trialsWords('allTrials')}
    />
  );
}
