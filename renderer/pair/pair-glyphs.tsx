import { memo } from 'react';
import type { PlacedEvent } from '#core/compare/like-events';
import { markPhrase } from '#core/marks/mark-words';
import type { EventMark } from '#core/swim-file/swim-schema';
import { Glyph } from '../score/glyph';
import type { ScoreAxis } from '../open-swim/score-axis';
import { pairGlyphHeight, type PairScoreLayout } from './pair-score-layout';
import { letterOf, type Which } from './pair-view';
import { pairWords } from '#core/words/pair';

interface Props {
  readonly which: Which;
  readonly events: readonly PlacedEvent[];
  readonly axis: ScoreAxis;
  readonly layout: PairScoreLayout;
  readonly onPick: (which: Which, event: EventMark) => void;
}

/** One swim's notes in its lanes. Each is a button that leads to its frame, and the other swim along. */
export const PairGlyphs = memo(function PairGlyphs({ which, events, axis, layout, onPick }: Props) {
  const letter = letterOf(which);
  return (
    <g className="score-glyphs pair-glyphs">
      {events.map(({ event, place }, index) => {
        const x = axis.toX(place);
        const y = pairGlyphHeight(layout, which, event.kind);
        if (y === null || x < axis.left - 10 || x > axis.right + 10) return null;
        const words = pairWords('frameLetter', {
          letter,
          markPhrase: markPhrase(event),
          frame: event.frame + 1,
        });
        return (
          // biome-ignore lint/a11y/useSemanticElements: an SVG drawing can hold no button element
          <g
            key={event.id}
            role="button"
            tabIndex={index === 0 ? 0 : -1}
            aria-label={words}
            className="glyph"
            data-side={letter}
            data-kind={event.kind}
            data-frame={event.frame}
            transform={`translate(${x.toFixed(2)},${y.toFixed(2)})`}
            onPointerDown={(press) => {
              press.stopPropagation();
              onPick(which, event);
            }}
            onKeyDown={(key) => {
              if (key.key !== 'Enter') return;
              key.preventDefault();
              key.stopPropagation();
              onPick(which, event);
            }}
          >
            <rect x={-13} y={-12} width={26} height={24} fill="transparent" />
            <Glyph kind={event.kind} scale={0.86} />
            <title>{words}</title>
          </g>
        );
      })}
    </g>
  );
});
