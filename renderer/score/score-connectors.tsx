import { memo } from 'react';
import type { EventMark } from '#core/swim-file/swim-schema';
import type { TargetMark } from '../readings/target-mark';
import type { ScoreAxis } from './score-axis';
import { glyphHeight, type ScoreLayout } from './score-layout';
import type { ScoreGap, ScoreRhythm } from './score-rhythm';

interface Props {
  readonly rhythm: ScoreRhythm;
  readonly events: ReadonlyMap<string, EventMark>;
  readonly timeOf: (mark: EventMark) => number;
  readonly axis: ScoreAxis;
  readonly layout: ScoreLayout;
  readonly litReading: string | null;
  readonly targetOf: (
    reading: string,
    value: { readonly milliseconds: number; readonly percent: number },
  ) => TargetMark | null;
}

/** Our estimate of a figure's width in the score's small type, pixels. */
const letter = 7.2;

const signed = (value: number, digits: number): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(digits)}`;

interface GapWords {
  readonly ms: string;
  readonly percent: string;
}

export function gapWords(gap: Pick<ScoreGap, 'milliseconds' | 'percent'>): GapWords {
  return { ms: `${signed(Math.round(gap.milliseconds), 0)} ms`, percent: `${signed(gap.percent, 1)} %` };
}

/** The longest way to write a gap that fits: with units, without, or not at all (the title still says it). */
function fittedWords(words: GapWords, room: number, twoLines: boolean): GapWords | null {
  const fits = ({ ms, percent }: GapWords): boolean =>
    Math.max(ms.length, twoLines ? percent.length : 0) * letter <= room;
  if (fits(words)) return words;
  const bare = { ms: words.ms.replace(' ms', ''), percent: words.percent.replace(' %', '') };
  return fits(bare) ? bare : null;
}

/** Ties between a hand event and its kick, each with how late the leg is. */
export const ScoreConnectors = memo(function ScoreConnectors(props: Props) {
  const { rhythm, events, timeOf, axis, layout, litReading, targetOf } = props;
  const { ties } = layout;
  const twoLines = ties.height >= 28;
  const drawn = rhythm.strokes.flatMap((stroke) =>
    stroke.gaps.flatMap((gap) => {
      const hand = events.get(gap.handEventId);
      const kick = events.get(gap.kickEventId);
      if (!hand || !kick) return [];
      const x1 = axis.toX(timeOf(hand));
      const x2 = axis.toX(timeOf(kick));
      const y1 = glyphHeight(layout, hand.kind) + 9;
      const y2 = glyphHeight(layout, kick.kind) - (kick.kind === 'kick-top' ? 6 : 2);
      return [{ stroke: stroke.number, gap, x1, x2, y1, y2 }];
    }),
  );
  drawn.sort((p, q) => Math.max(p.x1, p.x2) - Math.max(q.x1, q.x2));
  return (
    <g className="score-connectors">
      {drawn.map(({ stroke, gap, x1, x2, y1, y2 }, index) => {
        const words = gapWords(gap);
        const lit = litReading === gap.reading;
        const target = targetOf(gap.reading, gap);
        const tone =
          target === null ? 'plain' : target.met === 'yes' ? 'met' : target.met === 'no' ? 'unmet' : 'plain';
        const left = Math.max(x1, x2) + 6;
        const after = drawn[index + 1];
        const room = (after ? Math.min(after.x1, after.x2) : axis.right + 60) - left - 4;
        const shown = fittedWords(words, room, twoLines);
        const y = ties.top + 12;
        return (
          <g key={`${stroke}${gap.reading}`} className={`connector ${tone}${lit ? ' lit' : ''}`}>
            <path
              d={`M${x1},${y1} C${x1},${(y1 + y2) / 2} ${x2},${(y1 + y2) / 2} ${x2},${y2}`}
              className="connector-edge"
            />
            <path
              d={`M${x1},${y1} C${x1},${(y1 + y2) / 2} ${x2},${(y1 + y2) / 2} ${x2},${y2}`}
              className="connector-line"
            />
            {shown && (
              <text x={left} y={y} className="connector-words">
                {shown.ms}
                {twoLines && (
                  <tspan x={left} dy="1.15em" className="connector-percent">
                    {shown.percent}
                  </tspan>
                )}
              </text>
            )}
            <title>{`Stroke ${stroke}: the leg is ${words.ms} (${words.percent} of the stroke) from the hands`}</title>
          </g>
        );
      })}
    </g>
  );
});
