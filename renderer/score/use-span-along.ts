import { useEffect } from 'react';
import { type ClipClock, realTimeOf } from '#core/timeline/clip-clock';
import { useOpenSwim } from '../open-swim/open-swim';
import { panSpan, type wholeClip } from '../open-swim/score-axis';

/** A zoomed score follows the stage, without drawing itself again for every frame. */
export function useSpanAlong(clock: ClipClock, whole: ReturnType<typeof wholeClip>): void {
  const session = useOpenSwim();
  useEffect(
    () =>
      session.view.subscribe((state, before) => {
        const { scoreSpan } = state;
        if (!scoreSpan || state.frame === before.frame) return;
        const time = realTimeOf(clock, state.frame);
        const margin = (scoreSpan.to - scoreSpan.from) * 0.05;
        const over = time - (scoreSpan.to - margin);
        const under = time - (scoreSpan.from + margin);
        if (over > 0) session.view.setState({ scoreSpan: panSpan(scoreSpan, over, whole) });
        else if (under < 0) session.view.setState({ scoreSpan: panSpan(scoreSpan, under, whole) });
      }),
    [clock, session, whole],
  );
}
