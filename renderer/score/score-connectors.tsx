import { memo } from 'react';
import type { EventMark } from '#core/swim-file/swim-schema';
import type { TargetMark } from '#core/measures/target-mark';
import { type GapWords, placeGapLabels } from './gap-labels';
import { tiedReadings } from '../open-swim/rhythm-of';
import type { ScoreAxis } from '../open-swim/score-axis';
import { glyphHeight, type ScoreLayout } from './score-layout';
import type { ScoreGap, ScoreRhythm } from '../open-swim/score-rhythm';
import { scoreWords } from '#core/words/score';

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
  /** Whether what a tie says is doubtful. */
  readonly isDoubtful: (reading: string) => boolean;
}

const signed = (value: number, digits: number): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(digits)}`;

/** A doubtful one carries a question mark; its title says the word. */
export function gapWords(gap: Pick<ScoreGap, 'milliseconds' | 'percent'>, doubtful: boolean): GapWords {
  const ask = doubtful ? ' ?' : '';
  return {
    ms: `${scoreWords('ms', { signed: signed(Math.round(gap.milliseconds), 0) })}${ask}`,
    percent: `${signed(gap.percent, 1)} %${ask}`,
  };
}

/** A tie in a sentence, for those who point at it or hear it. */
export function gapSentence(gap: ScoreGap, stroke: number, doubtful: boolean): string {
  const { ms, percent } = gapWords(gap, false);
  const said = scoreWords('strokeLegStroke', {
    ...{ stroke, ms, percent },
    gapNames: gapNames[gap.reading] ?? 'gap',
  });
  return doubtful ? scoreWords('doubtful', { said }) : said;
}

/** The published names of the four gaps. */
const gapNames: Readonly<Record<string, string>> = {
  [tiedReadings.entry]: scoreWords('t1KickOneHand'),
  [tiedReadings.catch]: scoreWords('t2EndKickOne'),
  [tiedReadings.shoulder]: scoreWords('t3KickTwoHands'),
  [tiedReadings.exit]: scoreWords('t4EndKickTwo'),
};

/** Entry and exit are what the coach looks at first; catch and shoulders are drawn thinner. */
const isFirst = (reading: string): boolean => reading === tiedReadings.entry || reading === tiedReadings.exit;

/** Ties between a hand event and its kick, each with how late the leg is. */
export const ScoreConnectors = memo(function ScoreConnectors(props: Props) {
  const { rhythm, events, timeOf, axis, layout, litReading, targetOf, isDoubtful } = props;
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
  const labels = placeGapLabels(
    drawn.map(({ gap, x1, x2 }) => ({
      first: isFirst(gap.reading),
      left: Math.max(x1, x2) + 6,
      start: Math.min(x1, x2),
      words: gapWords(gap, isDoubtful(gap.reading)),
      before: gap.reading === tiedReadings.catch,
    })),
    { right: axis.right + 60, twoLines, ownRow: ties.height >= 44 },
  );
  return (
    <g className="score-connectors">
      {drawn.map(({ stroke, gap, x1, x2, y1, y2 }) => {
        const lit = litReading === gap.reading;
        const target = targetOf(gap.reading, gap);
        const tone =
          target === null ? 'plain' : target.met === 'yes' ? 'met' : target.met === 'no' ? 'unmet' : 'plain';
        return (
          <g
            key={`${stroke}${gap.reading}`}
            className={`connector ${tone}${lit ? ' lit' : ''}${isFirst(gap.reading) ? '' : ' second'}`}
          >
            <path
              d={`M${x1},${y1} C${x1},${(y1 + y2) / 2} ${x2},${(y1 + y2) / 2} ${x2},${y2}`}
              className="connector-edge"
            />
            <path
              d={`M${x1},${y1} C${x1},${(y1 + y2) / 2} ${x2},${(y1 + y2) / 2} ${x2},${y2}`}
              className="connector-line"
            />
            <title>{gapSentence(gap, stroke, isDoubtful(gap.reading))}</title>
          </g>
        );
      })}
      {/* above all ties, so that none runs through a number */}
      {labels.map(({ shown, left, down, row, end }, index) => {
        const stroke = drawn[index]?.stroke ?? 0;
        return shown ? (
          <text
            key={`${stroke}${drawn[index]?.gap.reading ?? ''}`}
            x={left}
            y={ties.top + 12 + down}
            textAnchor={end ? 'end' : 'start'}
            className={row === 'first' ? 'connector-words' : 'connector-words second'}
          >
            {shown.ms}
            {row === 'first' && twoLines && (
              <tspan x={left} dy="1.15em" className="connector-percent">
                {shown.percent}
              </tspan>
            )}
          </text>
        ) : null;
      })}
    </g>
  );
});
