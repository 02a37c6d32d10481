import type { EventKind } from '../../marks/event-kind';
import { difference, quotient, scaled, type Tracked } from '../../uncertainty/tracked';
import type { TimedEvent } from '../timed-event';
import type { Stroke } from './strokes';
import { timeOf, type TrackedCycle } from './tracked-reading';
import { keptWith } from '../../units/kept-with';

/** A gap between a hand event and a leg event of one stroke; positive: the leg is later. */
export interface GapKind {
  readonly id: string;
  readonly kick: 1 | 2;
  readonly leg: 'top' | 'bottom';
  readonly hand: 'entry' | 'catch' | 'shoulder' | 'exit';
}

/** Offsets of kick one to the hands' entry and of kick two to their exit, and the four published gaps. */
export const gapKinds: readonly GapKind[] = [
  { id: 'kick1-top-to-entry', kick: 1, leg: 'top', hand: 'entry' },
  { id: 'kick1-bottom-to-entry', kick: 1, leg: 'bottom', hand: 'entry' },
  { id: 'kick2-top-to-exit', kick: 2, leg: 'top', hand: 'exit' },
  { id: 'kick2-bottom-to-exit', kick: 2, leg: 'bottom', hand: 'exit' },
  { id: 'gap-t1', kick: 1, leg: 'top', hand: 'entry' },
  { id: 'gap-t2', kick: 1, leg: 'bottom', hand: 'catch' },
  { id: 'gap-t3', kick: 2, leg: 'top', hand: 'shoulder' },
  { id: 'gap-t4', kick: 2, leg: 'bottom', hand: 'exit' },
];

/** The two marks of a gap in one stroke; null when one is not marked or the stroke has not two kicks. */
export function gapMarks(stroke: Stroke, kind: GapKind): { hand: TimedEvent; leg: TimedEvent } | null {
  // two of three kicks, the third not marked, are not kicks one and two
  if (stroke.kicks.length !== 2 || (stroke.kicksEach ?? 2) > 2) return null;
  if (stroke.outOfOrder.length > 0) return null;
  const leg = stroke.kicks[kind.kick - 1]?.[kind.leg] ?? null;
  const hand = stroke[kind.hand];
  return leg && hand && !hand.put ? { hand, leg } : null;
}

/** Which kind of mark a gap's leg end is. */
export function legEvent(kind: GapKind): EventKind {
  return kind.leg === 'top' ? 'kick-top' : 'kick-bottom';
}

/** The gap of one stroke in milliseconds. */
export function gapMilliseconds(stroke: Stroke, kind: GapKind): TrackedCycle | null {
  const marks = gapMarks(stroke, kind);
  if (!marks) return null;
  return spanned(stroke, scaled(1000, difference(timeOf(marks.leg), timeOf(marks.hand))));
}

const kept = keptWith((_: Stroke) => new Map<string, TrackedCycle | null>());

/** The gap of one stroke in percent of that stroke; made once, as offsets, gaps and totals all ask for it. */
export function gapPercent(stroke: Stroke, kind: GapKind): TrackedCycle | null {
  const known = kept(stroke);
  const ends = `${kind.kick} ${kind.leg} ${kind.hand}`;
  const found = known.get(ends);
  if (found !== undefined) return found;
  const marks = gapMarks(stroke, kind);
  const share = marks
    ? quotient(difference(timeOf(marks.leg), timeOf(marks.hand)), strokeTime(stroke))
    : null;
  const percent = share ? shareSpanned(stroke, scaled(100, share)) : null;
  known.set(ends, percent);
  return percent;
}

export function strokeTime(stroke: Stroke): Tracked {
  return difference(timeOf(stroke.next), timeOf(stroke.entry));
}

/** How much an instant of one stroke usually strays from the swimmer's habit, as a share of the stroke. Our default. */
export const usualStray = 0.02;

/** A share of a stroke, percent, of one stroke; where its length is put, it is known by what strokes usually stray. */
export function shareSpanned(stroke: Stroke, value: Tracked): TrackedCycle {
  const cycle = spanned(stroke, value);
  return stroke.isShare ? { ...cycle, added: (usualStray * value.value) ** 2 } : cycle;
}

export function spanned(stroke: Stroke, value: Tracked): TrackedCycle {
  return { value, fromFrame: stroke.entry.event.frame, toFrame: stroke.next.event.frame };
}
