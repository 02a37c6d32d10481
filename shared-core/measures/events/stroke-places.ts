import type { EventKind } from '../../marks/event-kind';
import type { TimedEvent } from '../timed-event';
import { countCycles } from './count-cycles';
import { eventsOf } from './event-list';
import { type KickPlaces, kickPlaces } from './kick-places';
import { type StrokeClock, strokeClock } from './stroke-clock';

export interface StrokePlaces {
  /** Usual length of a stroke, seconds, told by all marks of the hands together. */
  readonly typical: number;
  /** Share of the gaps between hand marks that are whole strokes. */
  readonly share: number;
  /** Another length of the stroke explains the hand marks about as well. */
  readonly isContested: boolean;
  readonly clock: StrokeClock;
  /** Whole strokes from the first hand mark to the last. */
  readonly strokes: number;
  /** Share of the stroke between the hands' entry and their exit; null where not both are marked. */
  readonly handsInWater: number | null;
  /** Marks of the feet among the strokes. */
  readonly marks: readonly TimedEvent[];
  /** Which kicks those are; null without any, or where they keep no step with the strokes. */
  readonly feet: KickPlaces | null;
}

const handKinds = ['entry', 'catch', 'shoulder', 'navel', 'exit'] as const satisfies readonly EventKind[];

/** Marks of the feet this much of a stroke before the first hand mark and after the last still belong to the strokes. */
const beside = 0.3;

const kept = new WeakMap<readonly TimedEvent[], StrokePlaces | null>();

/**
 * Strokes as all marks of the hands tell them together, and the places of the kicks in them. Null without two hand marks of
 * one kind. Kept with the array of events.
 */
export function strokePlaces(events: readonly TimedEvent[]): StrokePlaces | null {
  const known = kept.get(events);
  if (known !== undefined) return known;
  const made = make(events);
  kept.set(events, made);
  return made;
}

function make(events: readonly TimedEvent[]): StrokePlaces | null {
  const rows = handKinds.map((kind) => eventsOf(events, kind));
  const count = countCycles(rows);
  if (!count) return null;
  const most = rows.reduce((a, b) => (b.length > a.length ? b : a));
  const clock = strokeClock(most, count.typical);
  if (!clock) return null;
  const times = rows.flatMap((row) => row.map(({ time }) => time));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const reach = beside * count.typical;
  const among = (kind: EventKind): readonly TimedEvent[] =>
    eventsOf(events, kind).filter(({ time }) => time >= first - reach && time <= last + reach);
  const [tops, bottoms] = [among('kick-top'), among('kick-bottom')];
  return {
    typical: count.typical,
    share: count.share,
    isContested: count.isContested,
    clock,
    strokes: Math.max(1, Math.floor(clock(last) - clock(first) + 0.1)),
    handsInWater: handsInWater(rows[0] ?? [], rows[4] ?? [], clock),
    marks: [...tops, ...bottoms],
    feet: kickPlaces(tops, bottoms, clock),
  };
}

function handsInWater(
  entries: readonly TimedEvent[],
  exits: readonly TimedEvent[],
  clock: StrokeClock,
): number | null {
  const shares = exits
    .flatMap((exit) => {
      const entry = entries.filter(({ time }) => time < exit.time).at(-1);
      const share = entry ? clock(exit.time) - clock(entry.time) : Number.NaN;
      return share < 1 ? [share] : [];
    })
    .sort((a, b) => a - b);
  return shares[shares.length >> 1] ?? null;
}
