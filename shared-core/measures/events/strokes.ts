import type { TimedEvent } from '../body/cycle-frame';
import { eventsOf } from './event-list';

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
  readonly breath: TimedEvent | null;
}

/**
 * How far before the hand entry, as a share of the stroke, kick one may begin and still belong to this stroke: half the
 * distance to the kick before it when two kicks share a stroke. Our own convention.
 */
export const kickLead = 0.25;

const insideKinds = ['catch', 'shoulder', 'navel', 'exit', 'breath'] as const;
type InsideKind = (typeof insideKinds)[number];

/** Kicks in order of time: tops paired with the next bottom before the next top. Unpaired marks stay, half empty. */
export function markedKicks(events: readonly TimedEvent[]): readonly MarkedKick[] {
  const marks = [...eventsOf(events, 'kick-top'), ...eventsOf(events, 'kick-bottom')].sort(
    (a, b) => a.time - b.time,
  );
  const kicks: MarkedKick[] = [];
  for (const mark of marks) {
    const last = kicks.at(-1);
    if (mark.event.kind === 'kick-top') kicks.push({ top: mark, bottom: null });
    else if (last?.top && !last.bottom) kicks[kicks.length - 1] = { top: last.top, bottom: mark };
    else kicks.push({ top: null, bottom: mark });
  }
  return kicks;
}

/**
 * Strokes between neighbouring hand entries. Where a gap is more than one and a half times the median, an entry was
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
  const gaps = entries.slice(1).map((each, i) => each.time - (entries[i]?.time ?? each.time));
  const typical = [...gaps].sort((a, b) => a - b)[(gaps.length - 1) >> 1] ?? 0;
  const kicks = markedKicks(events);
  const rows = new Map(insideKinds.map((kind) => [kind, eventsOf(events, kind)]));
  const strokes: Stroke[] = [];
  entries.slice(1).forEach((next, i) => {
    const entry = entries[i];
    if (!entry || next.time - entry.time > 1.5 * typical) return;
    const length = next.time - entry.time;
    const inside = (kind: InsideKind): TimedEvent | null =>
      rows.get(kind)?.find((each) => each.time >= entry.time && each.time < next.time) ?? null;
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
      breath: inside('breath'),
    });
  });
  return strokes;
}
