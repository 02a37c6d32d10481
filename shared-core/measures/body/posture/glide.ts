import { eventsOf } from '../../events/event-list';
import type { MissingReason } from '../../reading';
import type { TimedEvent } from '../../timed-event';

/** The part of a swim between leaving the wall and the first kick. */
export interface Glide {
  readonly from: TimedEvent;
  readonly to: TimedEvent;
}

export type GlideResult =
  | ({ readonly ok: true } & Glide)
  | { readonly ok: false; readonly reason: MissingReason };

/**
 * The glide as marked: from the first push-off to the first mark of a kick after it, top or bottom, whichever comes
 * first: where kicking has begun nothing is held any more. Both ends belong to it.
 */
export function glideOf(events: readonly TimedEvent[]): GlideResult {
  const from = eventsOf(events, 'push-off')[0];
  if (!from) return { ok: false, reason: { code: 'needs-events', kind: 'push-off', have: 0, need: 1 } };
  const kicks = [eventsOf(events, 'kick-top'), eventsOf(events, 'kick-bottom')].flatMap(
    (marks) => marks.find(({ time }) => time > from.time) ?? [],
  );
  const to = kicks.sort((a, b) => a.time - b.time)[0];
  return to
    ? { ok: true, from, to }
    : { ok: false, reason: { code: 'needs-event-beside', kind: 'kick-top', side: 'after', of: 'push-off' } };
}
