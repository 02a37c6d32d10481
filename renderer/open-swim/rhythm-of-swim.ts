import { eventTime } from '#core/marks/event-time';
import type { TimedEvent } from '#core/measures/timed-event';
import type { Swim } from '#core/swim-file/swim-schema';
import type { ClipClock } from '#core/timeline/clip-clock';
import { rhythmOf } from './rhythm-of';
import type { ScoreRhythm } from './score-rhythm';

const kept = new WeakMap<Swim['events'], { readonly clock: ClipClock; readonly rhythm: ScoreRhythm }>();

/** What the score draws of a swim: from the times of its events alone, so that it keeps up with a dragged glyph. */
export function rhythmOfSwim({ events }: Pick<Swim, 'events'>, clock: ClipClock): ScoreRhythm {
  const known = kept.get(events);
  if (known?.clock === clock) return known.rhythm;
  const timed = events
    .map((event): TimedEvent => ({ event, time: eventTime(clock, event), variance: 0 }))
    .sort((a, b) => a.time - b.time);
  const rhythm = rhythmOf(timed);
  kept.set(events, { clock, rhythm });
  return rhythm;
}
