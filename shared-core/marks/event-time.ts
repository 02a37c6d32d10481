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

/** No instant between frames is known better than this share of a frame. Our default. */
const finestShare = 0.05;

/**
 * Variance of that time, s²: a frame's rounding (Δ²/12) and the coach's own error, or what the traces left open of an
 * accepted proposal.
 */
export function eventTimeVariance(
  clock: ClipClock,
  mark: Pick<EventMark, 'frame' | 'refined'>,
  coachSd: number,
): number {
  const interval = localFrameInterval(clock, mark.frame);
  if (mark.refined) return Math.max(mark.refined.sdSeconds, finestShare * interval) ** 2;
  return interval ** 2 / 12 + coachSd ** 2;
}
