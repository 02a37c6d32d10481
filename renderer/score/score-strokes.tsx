import { memo } from 'react';
import type { ScoreAxis } from '../open-swim/score-axis';
import type { ScoreLayout } from './score-layout';
import type { ScoreRhythm } from '../open-swim/score-rhythm';
import { scoreWords } from '#core/words/score';

interface Props {
  readonly rhythm: ScoreRhythm;
  readonly axis: ScoreAxis;
  readonly layout: ScoreLayout;
}

/** Bars of the score: one a stroke, breathing strokes hatched, with its phases drawn under the hands. */
export const ScoreStrokes = memo(function ScoreStrokes({ rhythm, axis, layout }: Props) {
  const { staffs, phases } = layout;
  const top = staffs.hands.top - 16;
  const bottom = staffs.course.top + staffs.course.height;
  return (
    <g className="score-strokes">
      {rhythm.strokes.map((stroke) => {
        const from = axis.toX(stroke.from);
        const to = axis.toX(stroke.to);
        const width = to - from;
        return (
          <g key={stroke.number}>
            {stroke.breathing && (
              <rect
                x={from}
                y={staffs.hands.top}
                width={width}
                height={bottom - staffs.hands.top}
                className="breathing-hatch"
                fill="url(#breathing)"
              />
            )}
            <line x1={from} x2={from} y1={top} y2={bottom} className="bar-line" />
            <line x1={to} x2={to} y1={top} y2={bottom} className="bar-line" />
            {width > 46 && (
              <text x={from + 6} y={top + 10} className="bar-name">
                {width > 130 && stroke.breathing
                  ? scoreWords('strokeBreathing', { number: stroke.number })
                  : scoreWords('stroke', { number: stroke.number })}
              </text>
            )}
            {stroke.phases.map((phase, index) => {
              const left = axis.toX(phase.from);
              const right = axis.toX(phase.to);
              const words = `${phase.name} ${Math.round(phase.percent)} %`;
              return (
                <g key={phase.name}>
                  <rect
                    x={left}
                    y={phases.top}
                    width={Math.max(0, right - left)}
                    height={phases.height}
                    className={`phase phase-${index}`}
                  >
                    <title>{scoreWords('strokeNumber', { number: stroke.number, words })}</title>
                  </rect>
                  {right - left > words.length * 6 + 6 && (
                    <text x={(left + right) / 2} y={phases.top + phases.height / 2} className="phase-name">
                      {words}
                    </text>
                  )}
                </g>
              );
            })}
          </g>
        );
      })}
    </g>
  );
});
