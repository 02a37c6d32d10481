import { memo } from 'react';
import type { EventMark } from '#core/swim-file/swim-schema';
import { markPhrase } from '#core/marks/mark-words';
import { Glyph } from './glyph';
import type { ScoreAxis } from '../open-swim/score-axis';
import { glyphHeight, type ScoreLayout } from './score-layout';
import { scoreWords } from '#core/words/score';

interface Props {
  readonly events: readonly EventMark[];
  readonly timeOf: (mark: EventMark) => number;
  readonly axis: ScoreAxis;
  readonly layout: ScoreLayout;
  readonly selectedId: string | null;
  readonly lit: ReadonlySet<string>;
  readonly onPick: (mark: EventMark) => void;
}

const sideWords = (mark: EventMark): string | null => {
  if (mark.hand) return mark.hand === 'left' ? 'L' : 'R';
  if (mark.breathTo && mark.breathTo !== 'front') return mark.breathTo === 'left' ? 'L' : 'R';
  return mark.metres === null ? null : `${mark.metres} m`;
};

/** The notes of the score. Each is a button: Tab reaches the chosen one, click or Enter chooses. */
export const ScoreGlyphs = memo(function ScoreGlyphs(props: Props) {
  const { events, timeOf, axis, layout, selectedId, lit, onPick } = props;
  const tabStop = events.some((mark) => mark.id === selectedId) ? selectedId : (events[0]?.id ?? null);
  return (
    <g className="score-glyphs">
      {events.map((mark) => {
        const time = timeOf(mark);
        const x = axis.toX(time);
        if (x < axis.left - 10 || x > axis.right + 10) return null;
        const y = glyphHeight(layout, mark.kind);
        return (
          <ScoreGlyph
            key={mark.id}
            mark={mark}
            x={x}
            y={y}
            time={time}
            isChosen={mark.id === selectedId}
            isTabStop={mark.id === tabStop}
            isLit={lit.has(mark.id)}
            onPick={onPick}
          />
        );
      })}
    </g>
  );
});

interface GlyphProps {
  readonly mark: EventMark;
  readonly x: number;
  readonly y: number;
  readonly time: number;
  readonly isChosen: boolean;
  readonly isTabStop: boolean;
  readonly isLit: boolean;
  readonly onPick: (mark: EventMark) => void;
}

/** One note. A long swim has hundreds: where one is chosen or moved the others are not made again. */
const ScoreGlyph = memo(function ScoreGlyph(props: GlyphProps) {
  const { mark, x, y, time, isChosen, isTabStop, isLit, onPick } = props;
  const side = sideWords(mark);
  const words = markPhrase(mark);
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG drawing can hold no button element
    <g
      role="button"
      tabIndex={isTabStop ? 0 : -1}
      aria-pressed={isChosen}
      aria-label={scoreWords('frameSeconds', { words, frame: mark.frame + 1, time: time.toFixed(3) })}
      className={`glyph${isChosen ? ' chosen' : ''}${isLit ? ' lit' : ''}`}
      data-event={mark.id}
      data-kind={mark.kind}
      data-frame={mark.frame}
      transform={`translate(${x.toFixed(2)},${y.toFixed(2)})`}
      onKeyDown={(key) => {
        if (key.key !== 'Enter') return;
        key.preventDefault();
        key.stopPropagation();
        onPick(mark);
      }}
    >
      <rect x={-13} y={-15} width={26} height={30} fill="transparent" />
      {isLit && <circle r={13} className="glyph-lit" />}
      {isChosen && <rect x={-12.5} y={-13.5} width={25} height={27} rx={6} className="glyph-chosen" />}
      <Glyph kind={mark.kind} />
      {side && (
        <text x={mark.metres === null ? 10 : 9} y={4} className="glyph-side">
          {side}
        </text>
      )}
      <title>{scoreWords('frameSDragMove', { words, frame: mark.frame + 1, time: time.toFixed(3) })}</title>
    </g>
  );
});
