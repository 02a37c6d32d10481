import { useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { EventMark } from '#core/swim-file/swim-schema';
import type { EventProposal } from '#core/follow/propose-events';
import { eventTime } from '#core/marks/event-time';
import { realTimeOf } from '#core/timeline/clip-clock';
import { clockOf, useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { lookAt, proposalsOf } from '../open-swim/proposals';
import { targetMark } from '#core/measures/target-mark';
import { useDoubtfulReadings } from './use-doubtful-readings';
import { useElementSize } from '../ui/use-element-size';
import { eventsInOrder } from '../open-swim/selectors';
import { kickWavePath } from './kick-wave';
import { makeScoreAxis, wholeClip } from '../open-swim/score-axis';
import { ScoreConnectors } from './score-connectors';
import { ScoreGlyphs } from './score-glyphs';
import { glyphHeight, layoutScore, type ScoreLayout } from './score-layout';
import { ScorePlayhead } from './score-playhead';
import { ScoreProposals } from './score-proposals';
import { ScoreRuler } from './score-ruler';
import { ScoreStaves } from './score-staves';
import { ScoreStrokes } from './score-strokes';
import { ScoreTraces } from './score-traces';
import { useScorePointer } from './use-score-pointer';
import { useSpanAlong } from './use-span-along';
import './score.css';
import { scoreWords } from '#core/words/score';

const nothingLit: ReadonlySet<string> = new Set();

/** The rhythm of the swim, written like music under the stage. */
export function Score() {
  const session = useOpenSwim();
  const box = useRef<HTMLDivElement>(null);
  const drawing = useRef<SVGSVGElement>(null);
  const size = useElementSize(box);
  const events = useSwim(eventsInOrder);
  const clock = useSwim(clockOf);
  const rhythm = useStore(session.readings.store, (state) => state.rhythm);
  const readings = useStore(session.readings.store, (state) => state.readings);
  const swimmer = useStore(session.known, (state) => state.swimmer);
  const span = useView((state) => state.scoreSpan);
  const mode = useView((state) => state.scoreAxis);
  const selectedId = useView((state) => (state.selection.kind === 'event' ? state.selection.id : null));
  const litReading = useView((state) => state.litReading);

  const layout = useMemo(() => layoutScore(size.height), [size.height]);
  const whole = useMemo(() => wholeClip(clock), [clock]);
  const axis = useMemo(
    () =>
      makeScoreAxis({
        mode,
        from: (span ?? whole).from,
        to: (span ?? whole).to,
        left: layout.gutter + 14,
        right: Math.max(layout.gutter + 60, size.width - 18),
        strokeStarts: rhythm.cycleStarts,
      }),
    [mode, span, whole, layout, size.width, rhythm.cycleStarts],
  );
  const timeOf = useMemo(() => (mark: EventMark) => eventTime(clock, mark), [clock]);
  const proposals = useSwim(proposalsOf);
  const lookingId = useStore(session.follow, (state) => state.looking);
  const held = useStore(session.follow, (state) => state.dragged);
  const dragged = useMemo(() => held && { id: held.id, time: realTimeOf(clock, held.frame) }, [held, clock]);
  const look = useMemo(() => (proposal: EventProposal) => lookAt(session, proposal), [session]);
  const byId = useMemo(() => new Map(events.map((mark) => [mark.id, mark])), [events]);
  const lit = useMemo(() => {
    const reading = readings.find((each) => each.id === litReading);
    return reading?.status === 'computed' ? new Set(reading.from.eventIds) : nothingLit;
  }, [readings, litReading]);
  const targetOf = useMemo(
    () => (id: string, value: { readonly milliseconds: number; readonly percent: number }) => {
      const reading = readings.find((each) => each.id === id);
      if (reading?.status !== 'computed') return null;
      return targetMark(swimmer, id, reading.unit === '%' ? value.percent : value.milliseconds);
    },
    [readings, swimmer],
  );
  const isDoubtful = useDoubtfulReadings();
  const wave = useMemo(
    () =>
      kickWavePath(
        events
          .filter((mark) => mark.kind === 'kick-top' || mark.kind === 'kick-bottom')
          .map((mark) => ({
            time: timeOf(mark),
            top: mark.kind === 'kick-top',
            x: axis.toX(timeOf(mark)),
            y: glyphHeight(layout, mark.kind) + (mark.kind === 'kick-top' ? -4 : 4),
          })),
      ),
    [events, timeOf, axis, layout],
  );
  const pick = useScorePointer(drawing, axis, whole);

  useSpanAlong(clock, whole);

  return (
    <section className="score" aria-label={scoreWords('score')}>
      <div className="score-box" ref={box}>
        {/* biome-ignore lint/a11y/useSemanticElements: an SVG drawing of buttons can hold no fieldset */}
        <svg
          ref={drawing}
          width={size.width}
          height={size.height}
          viewBox={`0 0 ${Math.max(1, size.width)} ${Math.max(1, size.height)}`}
          role="group"
          aria-label={
            mode === 'seconds'
              ? scoreWords('rhythmSwimMarks', { events: events.length })
              : scoreWords('rhythmSwimMarksPercent', { events: events.length })
          }
        >
          <ScoreDefs layout={layout} width={size.width} />
          <ScoreStaves layout={layout} width={size.width} />
          <g clipPath="url(#score-clip)">
            <ScoreStrokes rhythm={rhythm} axis={axis} layout={layout} />
            <ScoreTraces axis={axis} layout={layout} />
            <path d={wave} className="kick-wave" />
            <ScoreConnectors
              rhythm={rhythm}
              events={byId}
              timeOf={timeOf}
              axis={axis}
              layout={layout}
              litReading={litReading}
              targetOf={targetOf}
              isDoubtful={isDoubtful}
            />
            <ScoreRuler axis={axis} layout={layout} />
            <ScorePlayhead axis={axis} layout={layout} />
            <ScoreProposals
              proposals={proposals}
              axis={axis}
              layout={layout}
              lookingId={lookingId}
              dragged={dragged}
              onLook={look}
            />
            <ScoreGlyphs
              events={events}
              timeOf={timeOf}
              axis={axis}
              layout={layout}
              selectedId={selectedId}
              lit={lit}
              onPick={pick}
            />
          </g>
        </svg>
        {events.length === 0 && proposals.length === 0 && (
          <p className="score-empty">{scoreWords('stepMomentMatters')}</p>
        )}
      </div>
    </section>
  );
}

/** The hatching of breathing strokes, and the part of the drawing that time runs through. */
function ScoreDefs({ layout, width }: { readonly layout: ScoreLayout; readonly width: number }) {
  return (
    <defs>
      <pattern
        id="breathing"
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line x1="0" y1="0" x2="0" y2="7" stroke="var(--head)" strokeWidth="2" opacity="0.2" />
      </pattern>
      <clipPath id="score-clip">
        <rect x={layout.gutter} y={0} width={Math.max(0, width - layout.gutter)} height={layout.height} />
      </clipPath>
    </defs>
  );
}
