import type { EventMark } from '../swim-file/swim-schema';
import { type ClipClock, localFrameInterval, realTimeOf } from '../timeline/clip-clock';

/**
 * When a marked event was, real seconds from the first shown picture: the start of its frame, or the instant between
 * frames of an accepted proposal.
 */
export function eventTime(clock: ClipClock, mark: Pick<EventMark, 'frame' | 'refined'>): number {
  const start = realTimeOf(clock, mark.frame);
  return mark.refined ? start + mark.refined.frames * localFrameInterval(clock, mark.frame) : start;
}

/**
 * Variance of that time, s²: a frame's rounding (Δ²/12) and the coach's own error, or what the traces left open of an
 * accepted proposal.
 */
export function eventTimeVariance(
  clock: ClipClock,
  mark: Pick<EventMark, 'frame' | 'refined'>,
  coachSd: number,
): number {
  if (mark.refined) return mark.refined.sdSeconds ** 2;
  return localFrameInterval(clock, mark.frame) ** 2 / 12 + coachSd ** 2;
}
