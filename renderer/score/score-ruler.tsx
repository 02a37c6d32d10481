import { memo } from 'react';
import type { ScoreAxis } from '../open-swim/score-axis';
import type { ScoreLayout } from './score-layout';

/** The time axis under the staves. */
export const ScoreRuler = memo(function ScoreRuler(props: {
  readonly axis: ScoreAxis;
  readonly layout: Pick<ScoreLayout, 'axisTop'>;
}) {
  const { axis, layout } = props;
  return (
    <g className="score-ruler">
      {axis.ticks.map((tick) => {
        const x = Math.round(axis.toX(tick.time)) + 0.5;
        return (
          <g key={`${tick.time}${tick.words}`}>
            <line
              className="tick"
              x1={x}
              x2={x}
              y1={layout.axisTop}
              y2={layout.axisTop + (tick.words === null ? 4 : 7)}
            />
            {tick.words !== null && (
              <text className="tick-words" x={x} y={layout.axisTop + 20}>
                {tick.words}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
});
