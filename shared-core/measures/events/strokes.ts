import type { TimedEvent } from '../timed-event';
import { longestCounted } from './count-cycles';
import { eventsOf } from './event-list';
import { inTurn } from './kick-places';
import { strokePlaces } from './stroke-places';

/** A kick as marked: its top and the bottom that follows it before the next top; null where not marked. */
export interface MarkedKick {
  readonly top: TimedEvent | null;
  readonly bottom: TimedEvent | null;
}

/** One butterfly stroke, hand entry to next hand entry, with what was marked inside. */
export interface Stroke {
  readonly number: number;
  readonly entry: TimedEvent;
  readonly next: TimedEvent;
  readonly catch: TimedEvent | null;
  readonly shoulder: TimedEvent | null;
  readonly navel: TimedEvent | null;
  readonly exit: TimedEvent | null;
  /** Kicks whose top (or bottom, where the top is not marked) falls in this stroke, by time. */
  readonly kicks: readonly MarkedKick[];
  /** Kicks that strokes of this swim have as their marks tell; null where those tell none. */
  readonly kicksEach: number | null;
  readonly breath: TimedEvent | null;
  /** Hand marks that are not in the order entry, catch, shoulder, navel, exit; none where they are. */
  readonly outOfOrder: readonly TimedEvent[];
  /** Its length is a share of a gap of several strokes, the entries between not marked. */
  readonly isShare: boolean;
}

/**
 * How far before the hand entry, as a share of the stroke, kick one may begin and still belong to this stroke: half the
 * distance to the kick before it when two kicks share a stroke. Our own convention.
 */
const kickLead = 0.25;

/** Hands of one stroke in the order in which they come. */
const handOrder = ['catch', 'shoulder', 'navel', 'exit'] as const;

/** Marks of a row that come before one listed earlier, with those they come before. */
const outOfOrder = (marks: readonly TimedEvent[]): readonly TimedEvent[] =>
  marks.filter((mark, i) =>
    marks.some((other, j) => (j < i && other.time >= mark.time) || (j > i && other.time <= mark.time)),
  );

const insideKinds = ['catch', 'shoulder', 'navel', 'exit', 'breath'] as const;
type InsideKind = (typeof insideKinds)[number];

/** A bottom later than this share of the stroke after a top is of another kick. Our default. */
const downWithin = 0.55;

/** Whether a top and the bottom after it are of one kick; with a mark missing between they are not. */
function ofOneKick(events: readonly TimedEvent[]): (top: TimedEvent, bottom: TimedEvent) => boolean {
  const strokes = strokePlaces(events);
  if (!strokes) return () => true;
  const follow = strokes.feet ? inTurn(strokes.feet, strokes.clock) : null;
  const placed = new Set(strokes.feet?.places.flatMap(({ marks }) => marks));
  return (top, bottom) =>
    follow && placed.has(top) && placed.has(bottom)
      ? follow(top, bottom)
      : bottom.time - top.time < downWithin * strokes.typical;
}

/** Kicks in order of time: tops paired with the next bottom before the next top. Unpaired marks stay, half empty. */
export function markedKicks(events: readonly TimedEvent[]): readonly MarkedKick[] {
  const marks = [...eventsOf(events, 'kick-top'), ...eventsOf(events, 'kick-bottom')].sort(
    (a, b) => a.time - b.time,
  );
  const kicks: MarkedKick[] = [];
  const isOneKick = ofOneKick(events);
  for (const mark of marks) {
    const last = kicks.at(-1);
    if (mark.event.kind === 'kick-top') kicks.push({ top: mark, bottom: null });
    else if (last?.top && !last.bottom && isOneKick(last.top, mark))
      kicks[kicks.length - 1] = { top: last.top, bottom: mark };
    else kicks.push({ top: null, bottom: mark });
  }
  return kicks;
}

/**
 * Strokes between neighbouring hand entries. Where a gap is more than one and a half strokes, an entry was
 * not marked and no stroke is made of it. Kicks are paired by time and never forced to be two.
 */
export function strokesOf(events: readonly TimedEvent[]): readonly Stroke[] {
  const known = kept.get(events) ?? pairStrokes(events);
  kept.set(events, known);
  return known;
}

/**
 * The same events, of which `strokesOf` gives the wanted strokes only: for timing of breathing strokes and of others
 * apart. A stroke keeps its end although that is the entry of the next.
 */
export function onlyStrokes(
  events: readonly TimedEvent[],
  wanted: (stroke: Stroke) => boolean,
): readonly TimedEvent[] {
  const same = [...events];
  kept.set(same, strokesOf(events).filter(wanted));
  return same;
}

const kept = new WeakMap<readonly TimedEvent[], readonly Stroke[]>();

/**
 * Strokes for what is timed within them: where one or two entries are not marked, those between their neighbours are put in
 * equal shares of the gap, so that the marks of these strokes still count. What begins or ends at such an entry is not timed.
 */
export function timedStrokes(events: readonly TimedEvent[]): readonly Stroke[] {
  const entries = eventsOf(events, 'entry');
  const typical = strokePlaces(events)?.typical ?? 0;
  const whole = strokesOf(events);
  const shares = entries.slice(1).flatMap((next, i): readonly [TimedEvent, TimedEvent][] => {
    const entry = entries[i];
    const count = entry ? Math.round((next.time - entry.time) / typical) : 0;
    if (!entry || next.time - entry.time <= 1.5 * typical || count > longestCounted) return [];
    const bounds = Array.from({ length: count + 1 }, (_, k) => putBetween(entry, next, k / count));
    return bounds.slice(1).map((to, k) => [bounds[k] ?? entry, to]);
  });
  if (shares.length === 0) return whole;
  return [...whole, ...shares.map(strokeIn(events))]
    .sort((a, b) => a.entry.time - b.entry.time)
    .map((stroke, i) => ({ ...stroke, number: i + 1 }));
}

/** An entry that is not marked, at a share of the way between two that are; the marked ones at its ends. */
function putBetween(from: TimedEvent, to: TimedEvent, share: number): TimedEvent {
  if (share === 0) return from;
  if (share === 1) return to;
  const time = from.time + share * (to.time - from.time);
  const frame = Math.round(from.event.frame + share * (to.event.frame - from.event.frame));
  return {
    event: { ...from.event, id: `${from.event.id}…${to.event.id} ${share}`, frame },
    time,
    variance: (1 - share) ** 2 * from.variance + share ** 2 * to.variance,
    put: {
      value: time,
      slopes: new Map([
        [from.event.id, 1 - share],
        [to.event.id, share],
      ]),
    },
  };
}

function pairStrokes(events: readonly TimedEvent[]): readonly Stroke[] {
  const entries = eventsOf(events, 'entry');
  const typical = strokePlaces(events)?.typical ?? 0;
  const make = strokeIn(events);
  return entries.slice(1).flatMap((next, i) => {
    const entry = entries[i];
    return !entry || next.time - entry.time > 1.5 * typical ? [] : [make([entry, next], i)];
  });
}

/** Makes the stroke from one entry to the next with the marks between. */
function strokeIn(
  events: readonly TimedEvent[],
): (bounds: readonly [TimedEvent, TimedEvent], index: number) => Stroke {
  const kicksEach = strokePlaces(events)?.feet?.kicks ?? null;
  const kicks = markedKicks(events);
  const rows = new Map(insideKinds.map((kind) => [kind, eventsOf(events, kind)]));
  return ([entry, next], index) => {
    const length = next.time - entry.time;
    const inside = (kind: InsideKind): TimedEvent | null =>
      rows.get(kind)?.find((each) => each.time >= entry.time && each.time < next.time) ?? null;
    const hands = handOrder.map(inside);
    const from = entry.time - kickLead * length;
    const to = next.time - kickLead * length;
    return {
      number: index + 1,
      entry,
      next,
      catch: inside('catch'),
      shoulder: inside('shoulder'),
      navel: inside('navel'),
      exit: inside('exit'),
      kicks: kicks.filter((kick) => {
        // a bottom alone comes about a quarter stroke after its top
        const time = kick.top?.time ?? (kick.bottom ? kick.bottom.time - kickLead * length : Number.NaN);
        return time >= from && time < to;
      }),
      kicksEach,
      breath: inside('breath'),
      outOfOrder: outOfOrder(hands.flatMap((mark) => mark ?? [])),
      isShare: entry.put !== undefined || next.put !== undefined,
    };
  };
}
