import { memo } from 'react';
import type { LikeEvents, PlacedEvent } from '#core/compare/like-events';
import type { LockedMode } from '#core/compare/pair-clock';
import { eventWords } from '#core/marks/mark-words';
import type { ScoreAxis } from '../open-swim/score-axis';
import { pairGlyphHeight, type PairScoreLayout } from './pair-score-layout';
import { laterWords } from './place-words';
import { pairWords } from '#core/words/pair';

interface Props {
  readonly ties: readonly LikeEvents[];
  /** All marks of B: words keep clear of them. */
  readonly events: readonly PlacedEvent[];
  readonly axis: ScoreAxis;
  readonly layout: PairScoreLayout;
  readonly mode: LockedMode;
}

/** Our estimate of a figure's width in the score's small type, pixels. */
const letter = 7.2;
/** Half a glyph and a little room. */
const clear = 11;

/** From each moment of A to the same moment of B, with how much later B is where there is room to write it. */
export const PairTies = memo(function PairTies({ ties, events, axis, layout, mode }: Props) {
  const drawn = ties
    .flatMap(({ first, second, later }) => {
      const y1 = pairGlyphHeight(layout, 0, first.event.kind);
      const y2 = pairGlyphHeight(layout, 1, second.event.kind);
      if (y1 === null || y2 === null) return [];
      return [{ first, later, x1: axis.toX(first.place), x2: axis.toX(second.place), y1, y2 }];
    })
    .sort((p, q) => p.x2 - q.x2);
  // what words must not be written over: glyphs of B, and words written before
  const taken = events.flatMap(({ event, place }) => {
    const y = pairGlyphHeight(layout, 1, event.kind);
    return y === null ? [] : [{ from: axis.toX(place) - clear, to: axis.toX(place) + clear, y }];
  });
  const written = drawn.map((tie) => {
    const words = laterWords(tie.later, mode);
    const from = tie.x2 + clear;
    const to = from + words.length * letter;
    const fits =
      to < axis.right + 20 &&
      !taken.some((each) => each.from < to && each.to > from && Math.abs(each.y - tie.y2) < 15);
    if (fits) taken.push({ from, to, y: tie.y2 });
    return { ...tie, words, from, fits: fits && tie.later !== 0 };
  });
  return (
    <g className="pair-ties">
      {written.map(({ first, words, x1, x2, y1, y2 }) => (
        <g key={first.event.id}>
          <line x1={x1} x2={x2} y1={y1} y2={y2} className="pair-tie-edge" />
          <line x1={x1} x2={x2} y1={y1} y2={y2} className="pair-tie" />
          <title>{pairWords('bFrom', { event: eventWords[first.event.kind], words })}</title>
        </g>
      ))}
      {written.map(
        ({ first, words, from, fits, y2 }) =>
          fits && (
            <text key={first.event.id} x={from} y={y2 + 4} className="connector-words">
              {words}
            </text>
          ),
      )}
    </g>
  );
});
