import type { EventKind } from '../../marks/event-kind';
import type { TimedEvent } from '../timed-event';
import { keptWith } from '../../units/kept-with';

const kept = keptWith(
  (events: readonly TimedEvent[]): ReadonlyMap<EventKind, readonly TimedEvent[]> => sortedByKind(events),
);

/**
 * Events of one kind by time; of two marks at one instant the first is kept, since they can't be told apart. Lists are
 * sorted once for an array of events and kept with it: an array given here must not be changed afterwards.
 *
 * An event's time is the start of the picture it is marked on. A picture shows the moment its exposure starts and the
 * coach picks the nearest one, so rounding leans to neither side and has the variance Δ²/12.
 */
export function eventsOf(events: readonly TimedEvent[], kind: EventKind): readonly TimedEvent[] {
  const known = kept(events);
  return known.get(kind) ?? [];
}

/** Distance marks that say how far, by time, each with its metres. */
export function measuredMarks(
  events: readonly TimedEvent[],
): readonly (TimedEvent & { readonly metres: number })[] {
  return eventsOf(events, 'distance-mark').flatMap((each) =>
    each.event.metres === null ? [] : [{ ...each, metres: each.event.metres }],
  );
}

function sortedByKind(events: readonly TimedEvent[]): ReadonlyMap<EventKind, readonly TimedEvent[]> {
  const lists = new Map<EventKind, TimedEvent[]>();
  for (const each of [...events].sort((a, b) => a.time - b.time)) {
    const list = lists.get(each.event.kind);
    const last = list?.at(-1);
    if (!list) lists.set(each.event.kind, [each]);
    else if (!last || each.time > last.time) list.push(each);
  }
  return lists;
}
