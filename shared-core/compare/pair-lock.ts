import type { TimedEvent } from '../measures/timed-event';
import type { EventKind } from '../marks/event-kind';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';

/** What one swim of a pair is locked on: a marked event, or a frame the coach stepped to. */
export type Lock =
  | { readonly on: 'event'; readonly id: string }
  | { readonly on: 'frame'; readonly frame: number };

/** Kinds tried in turn for a first lock; our default: where a stroke begins, then where a kick begins. */
const wanted: readonly EventKind[] = ['entry', 'kick-top', 'push-off', 'breakout', 'exit', 'kick-bottom'];

/** The first event of the first wanted kind that both swims have; without one, the first frame of each stretch. */
export function firstLocks(
  first: { readonly events: readonly TimedEvent[]; readonly from: number },
  second: { readonly events: readonly TimedEvent[]; readonly from: number },
): readonly [Lock, Lock] {
  for (const kind of wanted) {
    const a = first.events.find((each) => each.event.kind === kind);
    const b = second.events.find((each) => each.event.kind === kind);
    if (a && b)
      return [
        { on: 'event', id: a.event.id },
        { on: 'event', id: b.event.id },
      ];
  }
  return [
    { on: 'frame', frame: first.from },
    { on: 'frame', frame: second.from },
  ];
}

/** Real time of a lock; null when its event is not among these any more. */
export function lockTime(lock: Lock, events: readonly TimedEvent[], clock: ClipClock): number | null {
  if (lock.on === 'frame') return realTimeOf(clock, lock.frame);
  return events.find((each) => each.event.id === lock.id)?.time ?? null;
}
