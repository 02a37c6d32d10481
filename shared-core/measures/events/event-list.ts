import type { EventKind } from '../../marks/event-kind';
import type { TimedEvent } from '../body/cycle-frame';

/** Events of one kind by time; of two marks at one instant the first is kept, since they can't be told apart. */
export function eventsOf(events: readonly TimedEvent[], kind: EventKind): readonly TimedEvent[] {
  const sorted = events.filter((each) => each.event.kind === kind).sort((a, b) => a.time - b.time);
  return sorted.filter((each, i) => i === 0 || each.time > (sorted[i - 1]?.time ?? Number.NEGATIVE_INFINITY));
}
