import { useMemo } from 'react';
import { realTimeOf } from '#core/timeline/clip-clock';
import { clockOf, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { wholeClip, zoomSpan } from '../open-swim/score-axis';
import { useTip } from '../ui/use-tip';
import { scoreWords } from '#core/words/score';

/** How the score counts time, and how much of it is seen. */
export function TimeSwitch() {
  const tip = useTip();
  const { view } = useOpenSwim();
  const mode = useView((state) => state.scoreAxis);
  const span = useView((state) => state.scoreSpan);
  const frame = useView((state) => state.frame);
  const clock = useSwim(clockOf);
  const whole = useMemo(() => wholeClip(clock), [clock]);
  const zoom = (factor: number): void => {
    view.setState({ scoreSpan: zoomSpan(span ?? whole, realTimeOf(clock, frame), factor, whole, 0.25) });
  };
  return (
    <>
      <fieldset className="switch" aria-label={scoreWords('timeAxisCounts')}>
        <button
          type="button"
          aria-pressed={mode === 'seconds'}
          onClick={() => view.setState({ scoreAxis: 'seconds' })}
          title={tip('score-axis', scoreWords('trueSeconds'))}
        >
          {scoreWords('seconds')}
        </button>
        <button
          type="button"
          aria-pressed={mode === 'stroke'}
          onClick={() => view.setState({ scoreAxis: 'stroke' })}
          title={tip('score-axis', scoreWords('percentStrokeEvery'))}
        >
          {scoreWords('stroke2')}
        </button>
      </fieldset>
      <button
        type="button"
        onClick={() => zoom(0.5)}
        disabled={!span}
        title={scoreWords('showMoreTime')}
        aria-label={scoreWords('showMoreTime2')}
      >
        −
      </button>
      <button
        type="button"
        onClick={() => zoom(2)}
        title={scoreWords('showLessTime')}
        aria-label={scoreWords('showLessTime2')}
      >
        +
      </button>
      <button
        type="button"
        onClick={() => view.setState({ scoreSpan: null })}
        disabled={!span}
        title={scoreWords('showWholeClip')}
      >
        {scoreWords('whole')}
      </button>
    </>
  );
}
