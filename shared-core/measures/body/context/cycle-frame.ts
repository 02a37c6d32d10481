import { eventsOf } from '../../events/event-list';
import { longestCounted } from '../../events/count-cycles';
import { fitPeriod, type Period } from '../../events/fit-period';
import { type StrokePlaces, strokePlaces } from '../../events/stroke-places';
import { usualKick } from '../../events/usual-kick';
import type { MissingReason } from '../../reading';
import type { TimedEvent } from '../../timed-event';
import type { LandmarkTrace } from '../points/landmark-trace';
import { toeKicks } from './toe-kicks';
import type { CycleSpan } from './cycle-span';

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
  /** What that number rests on; nothing: two are taken, as a stroke usually has. */
  readonly kicksToldBy: 'toes' | 'marks' | 'nothing';
  /** Why readings of the kick can't be trusted; null where marks and toes agree. */
  readonly contradiction: MissingReason | null;
  readonly eventIds: readonly string[];
}

/**
 * Cycles for landmark readings: strokes, hand entry to hand entry, when the swim has two entries or more; else kicks,
 * between events of the commoner of kick top and kick bottom. Where marks are missing between, a stretch of two or three
 * cycles is taken as as many equal ones, and a longer one gives none. Null without two entries and without two tops or two bottoms.
 *
 * @param toe height of the toes, to check the kicks by
 */
export function cycleFrame(events: readonly TimedEvent[], toe: LandmarkTrace): CycleFrame | null {
  const entries = eventsOf(events, 'entry');
  const places = strokePlaces(events);
  const stroke = places && fitPeriod([entries], places.typical);
  if (stroke) {
    const strokes = framed('stroke', entries, stroke);
    return {
      ...strokes,
      ...kicksInStroke(events, places, strokes, toeKicks(toe, strokes.spans, stroke.seconds)),
    };
  }
  const tops = eventsOf(events, 'kick-top');
  const bottoms = eventsOf(events, 'kick-bottom');
  const usual = usualKick(tops, bottoms);
  const kick = usual === null ? null : fitPeriod([tops, bottoms], usual);
  if (!kick) return null;
  const kicks = framed('kick', bottoms.length > tops.length ? bottoms : tops, kick);
  // toes that go up and down several times from one mark to the next tell how many kicks were not marked
  const told = toeKicks(toe, kicks.spans, kick.seconds);
  const seen = told ?? 1;
  return {
    ...kicks,
    spans: kicks.spans.flatMap((span) => partsOf(span, seen)),
    period: kicks.period / seen,
    periodVariance: kicks.periodVariance / seen ** 2,
    kickHarmonic: 1,
    kicksToldBy: told === null ? 'marks' : 'toes',
    contradiction: null,
  };
}

/** How far the kicks of a stroke may be from a whole number where they keep no place in it. Our default. */
const wholeWithin = 0.12;

type Kicks = Pick<CycleFrame, 'kickHarmonic' | 'kicksToldBy' | 'contradiction'>;

/**
 * Kicks in one stroke: places of the stroke at which tops, or bottoms, are marked. The toes know better where they show
 * more of them, since marks may be missing; fewer is a contradiction. Two where neither tells.
 */
function kicksInStroke(
  events: readonly TimedEvent[],
  places: StrokePlaces,
  strokes: Framed,
  seen: number | null,
): Kicks {
  const marked = places.feet?.kicks ?? (places.marks.length > 0 ? fromPeriods(events, strokes) : null);
  if (marked === null && places.marks.length > 0)
    return {
      kickHarmonic: seen ?? 2,
      kicksToldBy: seen === null ? 'nothing' : 'toes',
      contradiction:
        seen === null ? { code: 'marks-contradict', what: 'kicks-and-strokes', frames: [] } : null,
    };
  if (seen !== null && seen >= (marked ?? 1))
    return { kickHarmonic: seen, kicksToldBy: 'toes', contradiction: null };
  if (seen !== null && marked !== null)
    return {
      kickHarmonic: marked,
      kicksToldBy: 'marks',
      contradiction: { code: 'marks-contradict', what: 'kicks-and-toes', frames: [] },
    };
  return {
    kickHarmonic: marked ?? 2,
    kicksToldBy: marked === null ? 'nothing' : 'marks',
    contradiction: null,
  };
}

/** The stroke's period over the kick's own, where that is near a whole number. */
function fromPeriods(events: readonly TimedEvent[], strokes: Framed): number | null {
  const kick = fitPeriod([eventsOf(events, 'kick-top'), eventsOf(events, 'kick-bottom')]);
  if (!kick) return null;
  const ratio = strokes.period / kick.seconds;
  const whole = Math.round(ratio);
  return whole > 0 && Math.abs(ratio - whole) < wholeWithin ? whole : null;
}

type Framed = Omit<CycleFrame, keyof Kicks>;

function framed(base: 'stroke' | 'kick', bounds: readonly TimedEvent[], rhythm: Period): Framed {
  const spans = bounds.slice(1).flatMap((to, i) => {
    const from = bounds[i];
    if (!from) return [];
    const cycles = Math.max(1, Math.round((to.time - from.time) / rhythm.seconds));
    const span = { fromFrame: from.event.frame, toFrame: to.event.frame, start: from.time, end: to.time };
    return cycles > longestCounted ? [] : partsOf(span, cycles);
  });
  return {
    base,
    spans,
    period: rhythm.seconds,
    periodVariance: rhythm.variance,
    eventIds: bounds.map((e) => e.event.id),
  };
}

/** A stretch of several cycles, the marks between them missing, in as many equal parts. */
function partsOf({ start, end, fromFrame, toFrame }: CycleSpan, parts: number): readonly CycleSpan[] {
  const time = (i: number): number => start + (i / parts) * (end - start);
  const frame = (i: number): number => Math.round(fromFrame + (i / parts) * (toFrame - fromFrame));
  return Array.from({ length: parts }, (_, i) => ({
    start: i === 0 ? start : time(i),
    end: i === parts - 1 ? end : time(i + 1),
    fromFrame: frame(i),
    toFrame: frame(i + 1),
  }));
}
