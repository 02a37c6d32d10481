import { eventsOf } from '../events/event-list';
import { fitPeriod, type Period } from '../events/fit-period';
import type { EventMark } from '../../swim-file/swim-schema';

export interface TimedEvent {
  readonly event: EventMark;
  /** Real seconds. */
  readonly time: number;
  /** Variance of the time, s²: frame rounding and marking. */
  readonly variance: number;
}

export interface CycleSpan {
  readonly fromFrame: number;
  readonly toFrame: number;
  readonly start: number;
  readonly end: number;
}

/** The cycles that landmark readings are taken over. */
export interface CycleFrame {
  /** Strokes where hand entries mark them, else kicks. */
  readonly base: 'stroke' | 'kick';
  readonly spans: readonly CycleSpan[];
  /** Mean period, seconds, and its variance. */
  readonly period: number;
  readonly periodVariance: number;
  /** Which harmonic of the base is the kick: 1 for kicks; for strokes the number of kicks in one. */
  readonly kickHarmonic: number;
  readonly eventIds: readonly string[];
}

/** The events that cycles are made of, in the order given. */
export function cycleEvents(events: readonly TimedEvent[]): readonly TimedEvent[] {
  return events.filter(
    ({ event }) => event.kind === 'entry' || event.kind === 'kick-top' || event.kind === 'kick-bottom',
  );
}

/**
 * Cycles for landmark readings: strokes, hand entry to hand entry, when the swim has two entries or more; else kicks,
 * between events of the commoner of kick top and kick bottom. A gap of more than one and a half periods is a missed
 * mark and gives no cycle. Null without two entries and without two tops or two bottoms.
 */
export function cycleFrame(events: readonly TimedEvent[]): CycleFrame | null {
  const entries = eventsOf(events, 'entry');
  const stroke = fitPeriod([entries]);
  if (stroke) {
    const strokes = framed('stroke', entries, stroke, 2);
    return { ...strokes, kickHarmonic: kicksInStroke(cycleEvents(events), strokes) };
  }
  const tops = eventsOf(events, 'kick-top');
  const bottoms = eventsOf(events, 'kick-bottom');
  const kick = fitPeriod([tops, bottoms]);
  return kick && framed('kick', bottoms.length > tops.length ? bottoms : tops, kick, 1);
}

/**
 * Kicks in one stroke: half of the tops and bottoms marked within whole strokes, by their number, so that it does not
 * matter how unevenly kicks are spaced nor on which side of a hand entry one falls. Two where none are marked.
 */
function kicksInStroke(events: readonly TimedEvent[], strokes: CycleFrame): number {
  const marks = events.filter(
    ({ event, time }) =>
      event.kind !== 'entry' && strokes.spans.some((span) => time >= span.start && time < span.end),
  );
  return marks.length === 0 ? 2 : Math.max(1, Math.round(marks.length / (2 * strokes.spans.length)));
}

function framed(
  base: 'stroke' | 'kick',
  bounds: readonly TimedEvent[],
  rhythm: Period,
  kickHarmonic: number,
): CycleFrame {
  const spans = bounds.slice(1).flatMap((to, i) => {
    const from = bounds[i];
    if (!from || to.time - from.time > 1.5 * rhythm.seconds) return [];
    return [{ fromFrame: from.event.frame, toFrame: to.event.frame, start: from.time, end: to.time }];
  });
  return {
    base,
    spans,
    period: rhythm.seconds,
    periodVariance: rhythm.variance,
    kickHarmonic,
    eventIds: bounds.map((e) => e.event.id),
  };
}
