import { type ReactNode, useMemo } from 'react';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Squad } from '#core/swim-file/squad-schema';
import { emptySquad } from '#core/swim-file/squad-file';
import { KeptTrouble } from '../documents/kept-messages';
import type { ScreenProps } from '../ui/screen-props';
import { useLibrary } from '../swims/use-library';
import type { OpenKept } from '../documents/open-kept';
import { useKept } from '../documents/use-kept';
import type { Practice } from '#core/practice/practice-schema';
import { practiceKind } from './practice-kind';
import { type Drills, useDrills } from './use-drills';
import { setsWords } from '#core/words/sets';

type Reach = ScreenProps;

/** What plan and deck of one practice share. */
export interface OpenPractice extends Reach {
  readonly kept: OpenKept<Practice>;
  readonly drills: Drills;
  readonly squad: Squad;
  readonly swims: readonly SwimSummary[];
}

interface Props extends Reach {
  readonly id: string;
  readonly children: (page: OpenPractice) => ReactNode;
}

const noSwims: readonly SwimSummary[] = [];

/** Opens a practice, with the squad, the drills and the swims it speaks of. */
export function PracticePage({ id, host, say, go, children }: Props) {
  const opening = useKept(practiceKind, host, id, say);
  const drills = useDrills(host);
  const { library } = useLibrary(host);
  const squad = library?.squad ?? emptySquad;
  const swims = library?.swims ?? noSwims;
  const kept = opening.state === 'open' ? opening.kept : null;
  const page = useMemo(
    () => (kept ? { kept, drills, squad, swims, host, say, go } : null),
    [kept, drills, squad, swims, host, say, go],
  );
  if (page) return children(page);
  if (opening.state !== 'failed')
    return <output className="sets-opening">{setsWords('openingPractice')}</output>;
  return (
    <KeptTrouble
      error={opening.error}
      onAgain={opening.again}
      onLeave={() => go({ screen: 'sets', ids: [] })}
      leaveWords={setsWords('allPractices')}
    />
  );
}
