import type { FrameRange } from '../timeline/frame-range';
import type { BodyContext } from '../measures/body/context/body-context';
import { type ReadingKnowledge, readingContext } from '../measures/compute-readings';
import { type ShownLine, shownLines } from '../drawing/shown-line';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';
import { cycleStarts } from '../measures/events/cycle-starts';
import type { PairSide } from './pair-clock';
import { type Lock, lockTime } from './pair-lock';
import { swimStretch } from './swim-stretch';

/** One swim of a pair as its stretch: what is measured, and how it runs. */
export interface PairPart {
  /** The swim with the marks of its stretch only. */
  readonly swim: Swim;
  readonly context: BodyContext;
  readonly side: PairSide;
  readonly cycle: 'stroke' | 'kick';
  /** Body lines by frame, in picture pixels: the coach's points, and followed or seen ones where there are none. */
  readonly lines: ReadonlyMap<number, ShownLine>;
}

/** A stretch of a swim made ready to be measured and run. A lock whose event has gone falls back to the stretch's start. */
export function pairPartOf(
  swim: Swim,
  knowledge: ReadingKnowledge,
  clock: ClipClock,
  stretch: FrameRange,
  lock: Lock,
): PairPart {
  const own = swimStretch(swim, stretch);
  const context = readingContext(own, knowledge);
  const cycles = cycleStarts(context.events);
  return {
    swim: own,
    context,
    cycle: cycles.of,
    lines: shownLines(own),
    side: {
      clock,
      ...stretch,
      lockTime: lockTime(lock, context.events, clock) ?? realTimeOf(clock, stretch.first),
      cycleStarts: cycles.times,
    },
  };
}
