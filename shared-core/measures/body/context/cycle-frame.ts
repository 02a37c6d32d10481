import { eventsOf } from '../../events/event-list';
import { longestCounted } from '../../events/count-cycles';
import { type Drift, fitDrift } from '../../events/fit-drift';
import { fitPeriod, type Period } from '../../events/fit-period';
import { type StrokePlaces, strokePlaces } from '../../events/stroke-places';
import { strokeRow } from '../../events/stroke-row';
import { usualKick } from '../../events/usual-kick';
import type { MissingReason } from '../../reading';
import type { TimedEvent } from '../../timed-event';
import type { LandmarkTrace } from '../points/landmark-trace';
import { toeKicks } from './toe-kicks';
import type { CycleSpan } from './cycle-span';

/** The cycles that landmark readings are taken over. */
export interface CycleFrame {
  /** Strokes where marks of the hands tell them, else kicks. */
  readonly base: 'stroke' | 'kick';
  readonly spans: readonly CycleSpan[];
  /** Mean period, seconds, and its variance. */
  readonly period: number;
  readonly periodVariance: number;
  /** How the tempo drifts over the cycles as the marks tell; null where they don't. */
  readonly drift: Drift | null;
  /** Which harmonic of the base is the kick: 1 for kicks; for strokes the number of kicks in one. */
  readonly kickHarmonic: number;
  /** What that number rests on; nothing: two are taken, as a stroke usually has. */
  readonly kicksToldBy: 'toes' | 'marks' | 'nothing';
  /** Why readings of the kick can't be trusted; null where marks and toes agree. */
  readonly contradiction: MissingReason | null;
  readonly eventIds: readonly string[];
}

/**
 * Cycles for landmark readings: strokes, hand entry to hand entry or between marks of another kind of the hands, when the swim
 * has two of one kind or more; else kicks, between events of the commoner of kick top and kick bottom. Where marks are missing
 * between, a stretch of two or three cycles is taken as as many equal ones, and across a longer one waves are not read. Null
 * without two marks of one kind.
 *
 * @param toe height of the toes, to check the kicks by
 */
export function cycleFrame(events: readonly TimedEvent[], toe: LandmarkTrace): CycleFrame | null {
  const places = strokePlaces(events);
  const hands = strokeRow(events, places?.typical);
  const feet = places?.feet?.places.map(({ marks }) => marks) ?? [];
  const strokes = places && framed('stroke', hands, places.typical, [hands, ...feet], []);
  if (strokes)
    return {
      ...strokes,
      ...kicksInStroke(events, places, strokes, toeKicks(toe, strokes.spans, strokes.period)),
    };
  const tops = eventsOf(events, 'kick-top');
  const bottoms = eventsOf(events, 'kick-bottom');
  const usual = usualKick(tops, bottoms);
  if (usual === null) return null;
  const [bounds, others] = bottoms.length > tops.length ? [bottoms, tops] : [tops, bottoms];
  const kicks = framed('kick', bounds, usual, [tops, bottoms], [others]);
  if (!kicks) return null;
  // toes that go up and down several times from one mark to the next tell how many kicks were not marked
  const told = toeKicks(toe, kicks.spans, kicks.period);
  const seen = told ?? 1;
  return {
    ...kicks,
    spans: kicks.spans.flatMap((span) => partsOf(span, seen)),
    period: kicks.period / seen,
    periodVariance: kicks.periodVariance / seen ** 2,
    kickHarmonic: 1,
    kicksToldBy: told === null ? 'marks' : 'toes',
    contradiction: places?.feet && !isKickOf(places, kicks.period / seen) ? kicksAndStrokes : null,
  };
}

const kicksAndStrokes: MissingReason = { code: 'marks-contradict', what: 'kicks-and-strokes', frames: [] };

/** Whether kicks of so many seconds are those that strokes have, within what single ones stray. */
const isKickOf = ({ typical, feet }: StrokePlaces, seconds: number): boolean =>
  feet !== null && Math.abs(Math.log((seconds * feet.kicks) / typical)) < otherKick;

/** Kicks longer or shorter than those of the strokes by this, in logarithms, are others. Our default. */
const otherKick = 0.25;

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
      contradiction: seen === null ? kicksAndStrokes : null,
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

/** More kicks than this in a stroke are none that marks without a place in it can tell. Our default. */
const mostKicks = 3;

/** The stroke's period over the kick's own, where that is near a whole number. */
function fromPeriods(events: readonly TimedEvent[], strokes: Framed): number | null {
  const kick = fitPeriod([eventsOf(events, 'kick-top'), eventsOf(events, 'kick-bottom')]);
  if (!kick) return null;
  const ratio = strokes.period / kick.seconds;
  const whole = Math.round(ratio);
  return whole > 0 && whole <= mostKicks && Math.abs(ratio - whole) < wholeWithin ? whole : null;
}

type Framed = Omit<CycleFrame, keyof Kicks>;

/**
 * Cycles between marks that can be counted. Across a hole too long to be counted waves don't go on in step, so that the longest
 * stretch without one is taken.
 *
 * @param rows all rows of marks that come once a cycle
 * @param beside rows whose period is told together with the bounds'
 */
function framed(
  base: 'stroke' | 'kick',
  all: readonly TimedEvent[],
  typical: number,
  rows: readonly (readonly TimedEvent[])[],
  beside: readonly (readonly TimedEvent[])[],
): Framed | null {
  const bounds = longestStretch(all, typical);
  const [first, last] = [bounds[0]?.time ?? 0, bounds.at(-1)?.time ?? 0];
  const within = (row: readonly TimedEvent[]): readonly TimedEvent[] =>
    bounds.length === all.length
      ? row
      : row.filter(({ time }) => time > first - typical / 2 && time < last + typical / 2);
  const rhythm: Period | null = fitPeriod([bounds, ...beside.map(within)], typical);
  if (!rhythm) return null;
  const spans = bounds.slice(1).flatMap((to, i) => {
    const from = bounds[i];
    if (!from) return [];
    const cycles = Math.max(1, Math.round((to.time - from.time) / rhythm.seconds));
    const span = { fromFrame: from.event.frame, toFrame: to.event.frame, start: from.time, end: to.time };
    return partsOf(span, cycles);
  });
  return {
    base,
    spans,
    period: rhythm.seconds,
    periodVariance: rhythm.variance,
    drift:
      spans.length > 1 ? fitDrift(rows.map(within), rhythm.seconds, (last - first) / rhythm.seconds) : null,
    eventIds: bounds.map((e) => e.event.id),
  };
}

/** The marks of the longest time in which no gap is too long to be counted in cycles. */
function longestStretch(marks: readonly TimedEvent[], typical: number): readonly TimedEvent[] {
  const stretches: TimedEvent[][] = [];
  for (const mark of marks) {
    const here = stretches.at(-1);
    const before = here?.at(-1);
    if (here && before && mark.time - before.time <= longestCounted * typical) here.push(mark);
    else stretches.push([mark]);
  }
  const long = (each: readonly TimedEvent[]): number => (each.at(-1)?.time ?? 0) - (each[0]?.time ?? 0);
  return stretches.reduce((a, b) => (long(b) > long(a) ? b : a), []);
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
