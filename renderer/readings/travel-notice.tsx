import { useStore } from 'zustand';
import type { Reading } from '#core/measures/reading';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { setScene } from '../open-swim/scene-commands';
import { readingsWords } from '#core/words/readings';
import { rich } from '../ui/rich';

/** Offers to turn the direction of travel round where the marks say that the swimmer goes the other way. */
export function TravelNotice() {
  const { document, readings } = useOpenSwim();
  const travel = useSwim((swim) => swim.scene.travel);
  const otherWay = useStore(readings.store, (state) => state.readings.some(saysOtherWay));
  if (travel === null || !otherWay) return null;
  return (
    <div className="slowdown-notice travel-notice" role="alert">
      <p>
        {rich(readingsWords.parts('swimmerGoesOther', { travel, b: (inside) => <strong>{inside}</strong> }))}
      </p>
      <button
        type="button"
        onClick={() => document.run(setScene('travel', travel === 'left' ? 'right' : 'left'))}
      >
        {readingsWords('turnRound')}
      </button>
    </div>
  );
}

const saysOtherWay = (reading: Reading): boolean =>
  reading.status === 'computed'
    ? reading.doubts.some(({ code }) => code === 'goes-other-way')
    : reading.reasons.some((reason) => reason.code === 'degenerate' && reason.what === 'other-way');
