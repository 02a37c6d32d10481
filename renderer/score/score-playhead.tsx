import { useStore } from 'zustand';
import { realTimeOf } from '#core/timeline/clip-clock';
import { clockOf, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import type { ScoreAxis } from '../open-swim/score-axis';
import type { ScoreLayout } from './score-layout';

/** Where the stage is. A dashed line while the picture asked for is not there yet. */
export function ScorePlayhead({ axis, layout }: { readonly axis: ScoreAxis; readonly layout: ScoreLayout }) {
  const frame = useView((state) => state.frame);
  const hasFilm = useStore(useOpenSwim().film, (state) => state.source !== null);
  const waiting = useView((state) => hasFilm && state.shownFrame !== state.frame);
  const clock = useSwim(clockOf);
  const x = axis.toX(realTimeOf(clock, frame));
  if (x < axis.left - 1 || x > axis.right + 1) return null;
  return (
    <g className={`playhead${waiting ? ' waiting' : ''}`} transform={`translate(${x.toFixed(2)},0)`}>
      <line y1={8} y2={layout.axisTop + 4} />
      <path d="M-7,1 h14 l-7,9Z" />
    </g>
  );
}
