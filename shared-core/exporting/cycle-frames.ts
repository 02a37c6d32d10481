import { cycleStarts } from '../measures/events/cycle-starts';
import type { TimedEvent } from '../measures/timed-event';
import { type ClipClock, frameAtRealTime, realTimeOf } from '../timeline/clip-clock';

/** One cycle of a swim and its pictures. */
export interface CycleFrames {
  readonly of: 'stroke' | 'kick';
  /** Which cycle of how many, from 1. */
  readonly number: number;
  readonly count: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** Frames at equal phase, the first at phase 0, none at phase 1 (that is the next cycle's first). */
  readonly phases: readonly { readonly phase: number; readonly frame: number }[];
}

/**
 * `pictures` frames at equal shares of one cycle, from its start on: of the whole cycle that holds `near`, else of the
 * nearest one. Frames are those nearest in time, not those shown, so that a share is missed by half a frame at most.
 * Null when no whole cycle is marked. `near` is a frame; `pictures` a whole number from 1.
 */
export function cycleFrames(
  events: readonly TimedEvent[],
  clock: ClipClock,
  near: number,
  pictures: number,
): CycleFrames | null {
  const { of, times } = cycleStarts(events);
  const count = times.length - 1;
  if (count < 1) return null;
  const at = realTimeOf(clock, near);
  const inside = times.findLastIndex((time) => time <= at + 1e-9);
  const index = Math.max(0, Math.min(count - 1, inside));
  const fromSeconds = times[index] as number;
  const toSeconds = times[index + 1] ?? fromSeconds;
  return {
    of,
    number: index + 1,
    count,
    fromSeconds,
    toSeconds,
    phases: Array.from({ length: pictures }, (_, each) => ({
      phase: each / pictures,
      frame: nearestFrame(clock, fromSeconds + ((toSeconds - fromSeconds) * each) / pictures),
    })),
  };
}

function nearestFrame(clock: ClipClock, time: number): number {
  const shown = frameAtRealTime(clock, time);
  const next = Math.min(shown + 1, clock.table.starts.length - 1);
  return realTimeOf(clock, next) - time < time - realTimeOf(clock, shown) ? next : shown;
}
