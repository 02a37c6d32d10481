import { memo } from 'react';
import type { Staff } from '#core/marks/event-kind';
import type { PairScoreLayout } from './pair-score-layout';
import { bothSwims, letterOf } from './pair-view';
import { pairWords } from '#core/words/pair';

const names: Readonly<Record<Staff, string>> = {
  hands: pairWords('hands'),
  feet: pairWords('feet'),
  head: pairWords('head'),
  course: pairWords('course'),
};

/** The empty staves: for each part of the body one lane of A and one of B under it. */
export const PairScoreStaves = memo(function PairScoreStaves(props: {
  readonly layout: PairScoreLayout;
  readonly width: number;
}) {
  const { layout, width } = props;
  const { gutter } = layout;
  return (
    <g className="score-staves">
      {layout.staves.map(({ staff, lanes }) => {
        const [a, b] = lanes;
        if (!a || !b) return null;
        return (
          <g key={staff}>
            <rect
              x={gutter}
              y={a.top}
              width={Math.max(0, width - gutter)}
              height={a.height + b.height}
              className="staff"
            />
            <line
              x1={gutter}
              x2={width}
              y1={Math.round(b.top) + 0.5}
              y2={Math.round(b.top) + 0.5}
              className="staff-line"
            />
            <text x={12} y={b.top} className="staff-name" style={{ fill: `var(--${staff}-ink)` }}>
              {names[staff]}
            </text>
            {bothSwims.map((which) => {
              const lane = which === 0 ? a : b;
              return (
                <text key={which} x={gutter - 12} y={lane.top + lane.height / 2} className="pair-lane-name">
                  {letterOf(which)}
                </text>
              );
            })}
          </g>
        );
      })}
    </g>
  );
});
