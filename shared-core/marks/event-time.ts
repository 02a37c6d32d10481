import { type ClipClock, localFrameInterval, realTimeOf } from '../timeline/clip-clock';

/** When a mark was made: on a frame, or between frames where an accepted proposal tells it finer. */
interface MarkedInstant {
  readonly frame: number;
  readonly refined: { readonly frames: number; readonly sdSeconds: number } | null;
}

/**
 * When a marked event was, real seconds from the first shown picture: the start of its frame, or the instant between
 * frames of an accepted proposal.
 */
export function eventTime(clock: ClipClock, mark: MarkedInstant): number {
  const start = realTimeOf(clock, mark.frame);
  return mark.refined ? start + mark.refined.frames * localFrameInterval(clock, mark.frame) : start;
}

/** No instant between frames is known better than this share of a frame. Our default. */
const finestShare = 0.05;

/**
 * Variance of that time, s²: a frame's rounding (Δ²/12) and the coach's own error, or what the traces left open of an
 * accepted proposal.
 */
export function eventTimeVariance(clock: ClipClock, mark: MarkedInstant, coachSd: number): number {
  const interval = localFrameInterval(clock, mark.frame);
  if (mark.refined) return Math.max(mark.refined.sdSeconds, finestShare * interval) ** 2;
  return interval ** 2 / 12 + coachSd ** 2;
}
