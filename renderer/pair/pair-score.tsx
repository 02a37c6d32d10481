import { useMemo, useRef } from 'react';
import type { PairPart } from '#core/compare/pair-part';
import { type LikeEvents, likeEvents, type PlacedEvent } from '#core/compare/like-events';
import { placesOf, placeOfTime } from '#core/compare/pair-clock';
import { farthestLike } from '#core/video/strip-ops';
import { staffOf } from '#core/marks/event-kind';
import { kickWavePath } from '../score/kick-wave';
import { ScoreRuler } from '../score/score-ruler';
import '../score/score.css';
import { useElementSize } from '../ui/use-element-size';
import { pairAxis } from './pair-axis';
import { PairGlyphs } from './pair-glyphs';
import { PairPlayheads } from './pair-playheads';
import { layoutPairScore, pairGlyphHeight } from './pair-score-layout';
import { PairScoreStaves } from './pair-score-staves';
import { usePairPart, usePairView } from './pair-session';
import { PairTies } from './pair-ties';
import { readMode } from './pair-steps';
import { bothSwims, letterOf, type Which } from './pair-view';
import { usePairScorePointer } from './use-pair-score-pointer';
import { pairWords } from '#core/words/pair';

function placed({ context, side }: PairPart, mode: 'time' | 'cycle'): readonly PlacedEvent[] {
  return context.events.map(({ event, time }) => ({ event, place: placeOfTime(side, mode, time) }));
}

/** One score for both swims: each staff holds A over B on one axis, and ties say how much later B is. */
export function PairScore() {
  const box = useRef<HTMLDivElement>(null);
  const drawing = useRef<SVGSVGElement>(null);
  const size = useElementSize(box);
  const a = usePairPart(0);
  const b = usePairPart(1);
  const mode = usePairView((state) => readMode(state.mode));
  const isFree = usePairView((state) => state.mode === 'free');
  const span = usePairView((state) => state.scoreSpan);
  const events = useMemo(() => [placed(a, mode), placed(b, mode)] as const, [a, b, mode]);
  const used = useMemo(
    () => new Set(events.flatMap((each) => each.map(({ event }) => staffOf(event.kind)))),
    [events],
  );
  const layout = useMemo(() => layoutPairScore(size.height, used), [size.height, used]);
  const whole = useMemo(() => {
    const { from, to } = placesOf([a.side, b.side], mode);
    return { from, to: Math.max(to, from + 0.05) };
  }, [a, b, mode]);
  const axis = useMemo(
    () => pairAxis(mode, span ?? whole, layout.gutter + 14, Math.max(layout.gutter + 60, size.width - 20)),
    [mode, span, whole, layout, size.width],
  );
  const ties = useMemo(
    (): readonly LikeEvents[] => likeEvents(events[0], events[1], farthestLike[mode]),
    [events, mode],
  );
  const pick = usePairScorePointer(drawing, axis, whole);
  const count = events[0].length + events[1].length;
  return (
    <section className="score pair-score" aria-label={pairWords('scoreBothSwims')}>
      <div className="score-box" ref={box}>
        {/* biome-ignore lint/a11y/useSemanticElements: an SVG drawing of buttons can hold no fieldset */}
        <svg
          ref={drawing}
          width={size.width}
          height={size.height}
          viewBox={`0 0 ${Math.max(1, size.width)} ${Math.max(1, size.height)}`}
          role="group"
          aria-label={
            mode === 'time'
              ? pairWords('rhythmBothSwims', { count })
              : pairWords('rhythmBothSwimsMarks', { count })
          }
        >
          <defs>
            <clipPath id="pair-score-clip">
              <rect
                x={layout.gutter}
                y={0}
                width={Math.max(0, size.width - layout.gutter)}
                height={layout.height}
              />
            </clipPath>
          </defs>
          <PairScoreStaves layout={layout} width={size.width} />
          <g clipPath="url(#pair-score-clip)">
            <line
              x1={axis.toX(0)}
              x2={axis.toX(0)}
              y1={layout.top}
              y2={layout.axisTop}
              className="pair-lock-line"
            />
            {bothSwims.map((which) => (
              <path
                key={which}
                d={waveOf(events[which], (each) => axis.toX(each.place), layout, which)}
                className="kick-wave"
              />
            ))}
            <PairTies ties={ties} events={events[1]} axis={axis} layout={layout} mode={mode} />
            <ScoreRuler axis={axis} layout={layout} />
            <PairPlayheads axis={axis} layout={layout} />
            {bothSwims.map((which) => (
              <PairGlyphs
                key={which}
                which={which}
                events={events[which]}
                axis={axis}
                layout={layout}
                onPick={pick}
              />
            ))}
          </g>
        </svg>
        {count === 0 && <p className="score-empty">{pairWords('neitherStretchHas')}</p>}
        <span className="hearable">
          {bothSwims.map(
            (which) => `${pairWords('marks', { letterOf: letterOf(which), events: events[which].length })} `,
          )}
        </span>
      </div>
      {isFree && <p className="pair-free-note">{pairWords('freeTimesStill')}</p>}
    </section>
  );
}

function waveOf(
  events: readonly PlacedEvent[],
  toX: (each: PlacedEvent) => number,
  layout: ReturnType<typeof layoutPairScore>,
  which: Which,
): string {
  const marks = events.flatMap((each) => {
    const { kind } = each.event;
    const y = pairGlyphHeight(layout, which, kind);
    if ((kind !== 'kick-top' && kind !== 'kick-bottom') || y === null) return [];
    return [{ time: each.place, top: kind === 'kick-top', x: toX(each), y }];
  });
  return kickWavePath(marks);
}
