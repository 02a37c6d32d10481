import { useStore } from 'zustand';
import type { ScoreAxis } from '../open-swim/score-axis';
import type { PairScoreLayout } from './pair-score-layout';
import { usePair, usePairPart, usePairView } from './pair-session';
import { readMode } from './pair-steps';
import { placeOfFrame } from '#core/compare/pair-clock';
import { bothSwims, letterOf, type Which } from './pair-view';

interface Props {
  readonly axis: ScoreAxis;
  readonly layout: PairScoreLayout;
}

/** Where each stage is. The swim that follows stands at the start of its picture, a little before the other. */
export function PairPlayheads({ axis, layout }: Props) {
  return bothSwims.map((which) => <Playhead key={which} which={which} axis={axis} layout={layout} />);
}

function Playhead({ which, axis, layout }: Props & { readonly which: Which }) {
  const session = usePair();
  const { side } = usePairPart(which);
  const mode = usePairView((state) => readMode(state.mode));
  const leads = usePairView((state) => state.lead === which);
  const frame = useStore(session.swims[which].view, (state) => state.frame);
  const x = axis.toX(placeOfFrame(side, mode, frame));
  if (x < axis.left - 1 || x > axis.right + 1) return null;
  return (
    <g
      className={`playhead pair-playhead${leads ? ' leads' : ''}`}
      data-side={letterOf(which)}
      transform={`translate(${x.toFixed(2)},0)`}
    >
      <line y1={leads ? 14 : 18} y2={layout.axisTop + 4} />
      <text x={which === 0 ? -3 : 3} y={11} textAnchor={which === 0 ? 'end' : 'start'}>
        {letterOf(which)}
      </text>
    </g>
  );
}
