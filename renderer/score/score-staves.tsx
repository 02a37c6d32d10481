import { memo } from 'react';
import type { Staff } from '#core/marks/event-kind';
import type { ScoreLayout } from './score-layout';
import { scoreWords } from '#core/words/score';

const names: Readonly<Record<Staff, string>> = {
  hands: scoreWords('hands'),
  feet: scoreWords('feet'),
  head: scoreWords('head'),
  course: scoreWords('course'),
};
/** Staff lines as shares of the staff: surface and depth for hands, top and bottom of the kick for feet. */
const lines: Readonly<Record<Staff, readonly number[]>> = {
  hands: [0.2, 0.5, 0.8],
  feet: [0.15, 0.5, 0.85],
  head: [0.5],
  course: [0.5],
};

export const ScoreStaves = memo(function ScoreStaves(props: {
  readonly layout: ScoreLayout;
  readonly width: number;
}) {
  const { layout, width } = props;
  const { gutter } = layout;
  return (
    <g className="score-staves">
      {(Object.keys(names) as Staff[]).map((staff) => {
        const band = layout.staffs[staff];
        return (
          <g key={staff}>
            <rect
              x={gutter}
              y={band.top}
              width={Math.max(0, width - gutter)}
              height={band.height}
              className="staff"
            />
            {lines[staff].map((share) => (
              <line
                key={share}
                x1={gutter}
                x2={width}
                y1={Math.round(band.top + band.height * share) + 0.5}
                y2={Math.round(band.top + band.height * share) + 0.5}
                className="staff-line"
              />
            ))}
            <text
              x={12}
              y={band.top + band.height / 2}
              className="staff-name"
              style={{ fill: `var(--${staff}-ink)` }}
            >
              {names[staff]}
            </text>
          </g>
        );
      })}
    </g>
  );
});
