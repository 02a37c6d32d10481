import { lazy, Suspense, useMemo } from 'react';
import { readingContext } from '#core/measures/compute-readings';
import { overlaidCycles } from '#core/measures/events/overlaid-cycles';
import { Score } from '../score/score';
import { ScoreOverlaid } from '../score/score-overlaid';
import { useSwim, useView } from '../open-swim/open-swim';
import { benchWords } from '#core/words/bench';

/** Plots bring a library of their own: it is read when they are first asked for. */
const PlotsPanel = lazy(() => import('../plots/plots-panel').then((part) => ({ default: part.PlotsPanel })));

/** What lies under the stage, as the coach chose. */
export function LowerPart() {
  const lower = useView((state) => state.lower);
  if (lower === 'overlaid') return <Overlaid />;
  if (lower === 'plots')
    return (
      <Suspense fallback={<output className="plots">{benchWords('gettingPlotsReady')}</output>}>
        <PlotsPanel />
      </Suspense>
    );
  return <Score />;
}

function Overlaid() {
  const swim = useSwim((each) => each);
  const which = useView((state) => state.overlaidOf);
  const overlaid = useMemo(() => {
    const { events } = readingContext(swim, { swimmer: null, markingError: null });
    return overlaidCycles(events, which);
  }, [swim, which]);
  return <ScoreOverlaid overlaid={overlaid} />;
}
