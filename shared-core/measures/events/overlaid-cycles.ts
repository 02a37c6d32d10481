import { cycleStarts } from './cycle-starts';
import { type EventKind, eventKinds } from '../../marks/event-kind';
import type { TimedEvent } from '../timed-event';
import { standardDeviation } from '../../signal/standard-deviation';
import { gapKinds, gapMarks } from './gaps';
import { markedKicks, type Stroke, strokesOf } from './strokes';

/** One mark of one cycle, at its place in that cycle. */
interface OverlaidMark {
  readonly eventId: string;
  readonly frame: number;
  /** From the cycle's start; below 0 when it comes before it. */
  readonly percent: number;
  readonly cycle: number;
  readonly breathing: boolean;
}

/** The same moment of all cycles: where it falls, and how much it wanders. */
export interface OverlaidMoment {
  readonly kind: EventKind;
  /** Which kick of the stroke; null for all but kicks of strokes. */
  readonly kick: 1 | 2 | null;
  readonly marks: readonly OverlaidMark[];
  readonly mean: number;
  /** Null with one cycle only. */
  readonly sd: number | null;
}

/** A gap between hands and kick over all cycles: leg minus hand. */
interface OverlaidGap {
  readonly id: 'gap-t1' | 'gap-t2' | 'gap-t3' | 'gap-t4';
  readonly hand: EventKind;
  readonly leg: EventKind;
  readonly kick: 1 | 2;
  readonly milliseconds: { readonly mean: number; readonly sd: number | null };
  readonly percent: { readonly mean: number; readonly sd: number | null };
}

export interface OverlaidCycles {
  readonly of: 'stroke' | 'kick';
  readonly cycles: number;
  readonly moments: readonly OverlaidMoment[];
  readonly gaps: readonly OverlaidGap[];
}

export type WhichStrokes = 'all' | 'breathing' | 'not-breathing';

/**
 * All strokes laid over one another in percent of the stroke (all kicks, top to top, where there are no strokes), with mean
 * and standard deviation of every moment. A kick is told first or second only in strokes of two. Events in order of time.
 */
export function overlaidCycles(events: readonly TimedEvent[], which: WhichStrokes = 'all'): OverlaidCycles {
  const strokes = strokesOf(events).filter(
    ({ breath }) => which === 'all' || (breath !== null) === (which === 'breathing'),
  );
  if (strokes.length > 0)
    return {
      of: 'stroke',
      cycles: strokes.length,
      moments: momentsOf(strokes.flatMap((stroke) => strokeMarks(stroke, events))),
      gaps: gapsOf(strokes),
    };
  // strokes there are, though none of the wanted: then nothing, and not their kicks
  if (strokesOf(events).length > 0) return { of: 'stroke', cycles: 0, moments: [], gaps: [] };
  const { times } = cycleStarts(events);
  const kicks = times.slice(1).flatMap((end, i) => kickMarks(events, times[i] ?? end, end, i + 1));
  return { of: 'kick', cycles: Math.max(0, times.length - 1), moments: momentsOf(kicks), gaps: [] };
}

type Placed = OverlaidMark & Pick<OverlaidMoment, 'kind' | 'kick'>;

function strokeMarks(stroke: Stroke, events: readonly TimedEvent[]): Placed[] {
  const start = stroke.entry.time;
  const length = stroke.next.time - start;
  const place = (mark: TimedEvent, kick: 1 | 2 | null): Placed => ({
    eventId: mark.event.id,
    frame: mark.event.frame,
    percent: (100 * (mark.time - start)) / length,
    cycle: stroke.number,
    breathing: stroke.breath !== null,
    kind: mark.event.kind,
    kick,
  });
  const head = events.find(
    ({ event, time }) => event.kind === 'head-in' && time >= start && time < stroke.next.time,
  );
  const hands = [stroke.entry, stroke.catch, stroke.shoulder, stroke.navel, stroke.exit, stroke.breath, head];
  const kicks =
    stroke.kicks.length === 2
      ? stroke.kicks.flatMap(({ top, bottom }, i) =>
          [top, bottom].flatMap((mark) => (mark ? [place(mark, i === 0 ? 1 : 2)] : [])),
        )
      : [];
  return [...hands.flatMap((mark) => (mark ? [place(mark, null)] : [])), ...kicks];
}

function kickMarks(events: readonly TimedEvent[], start: number, end: number, cycle: number): Placed[] {
  return markedKicks(events).flatMap(({ top, bottom }) =>
    [top, bottom].flatMap((mark): Placed[] =>
      mark && mark.time >= start && mark.time < end
        ? [
            {
              eventId: mark.event.id,
              frame: mark.event.frame,
              percent: (100 * (mark.time - start)) / (end - start),
              cycle,
              breathing: false,
              kind: mark.event.kind,
              kick: null,
            },
          ]
        : [],
    ),
  );
}

function momentsOf(placed: readonly Placed[]): readonly OverlaidMoment[] {
  return eventKinds.flatMap((kind) =>
    ([null, 1, 2] as const).flatMap((kick): OverlaidMoment[] => {
      const marks = placed.filter((each) => each.kind === kind && each.kick === kick);
      if (marks.length === 0) return [];
      const percents = marks.map(({ percent }) => percent);
      return [{ kind, kick, marks, mean: meanOf(percents), sd: standardDeviation(percents) }];
    }),
  );
}

function gapsOf(strokes: readonly Stroke[]): readonly OverlaidGap[] {
  return (['gap-t1', 'gap-t2', 'gap-t3', 'gap-t4'] as const).flatMap((id): OverlaidGap[] => {
    const kind = gapKinds.find((each) => each.id === id);
    if (!kind) return [];
    const found = strokes.flatMap((stroke) => {
      const marks = gapMarks(stroke, kind);
      if (!marks) return [];
      const seconds = marks.leg.time - marks.hand.time;
      const share = seconds / (stroke.next.time - stroke.entry.time);
      return [{ milliseconds: 1000 * seconds, percent: 100 * share }];
    });
    if (found.length === 0) return [];
    const spread = (values: readonly number[]) => ({ mean: meanOf(values), sd: standardDeviation(values) });
    return [
      {
        id,
        hand: kind.hand,
        leg: kind.leg === 'top' ? 'kick-top' : 'kick-bottom',
        kick: kind.kick,
        milliseconds: spread(found.map(({ milliseconds }) => milliseconds)),
        percent: spread(found.map(({ percent }) => percent)),
      },
    ];
  });
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
