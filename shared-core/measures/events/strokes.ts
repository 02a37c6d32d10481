import type { TimedEvent } from '../timed-event';
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
  const among = new Set(strokes.marks);
  return (top, bottom) =>
    follow && among.has(top) && among.has(bottom)
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

function pairStrokes(events: readonly TimedEvent[]): readonly Stroke[] {
  const entries = eventsOf(events, 'entry');
  const places = strokePlaces(events);
  if (!places) return [];
  const { typical } = places;
  const kicksEach = places.feet?.kicks ?? null;
  const kicks = markedKicks(events);
  const rows = new Map(insideKinds.map((kind) => [kind, eventsOf(events, kind)]));
  const strokes: Stroke[] = [];
  entries.slice(1).forEach((next, i) => {
    const entry = entries[i];
    if (!entry || next.time - entry.time > 1.5 * typical) return;
    const length = next.time - entry.time;
    const inside = (kind: InsideKind): TimedEvent | null =>
      rows.get(kind)?.find((each) => each.time >= entry.time && each.time < next.time) ?? null;
    const hands = handOrder.map(inside);
    const from = entry.time - kickLead * length;
    const to = next.time - kickLead * length;
    strokes.push({
      number: i + 1,
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
    });
  });
  return strokes;
}
