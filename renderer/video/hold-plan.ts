import type { FrameRange } from '#core/timeline/frame-range';
import type { PictureOrder } from '#core/timeline/picture-order';
import { holdingRange, type Walk } from './decoding-plan';

/** What is worth holding now. */
export interface HoldPlan {
  /** Frames worth holding at all. */
  readonly range: FrameRange;
  /** Of those, the ones worth holding at full resolution. */
  readonly whole: FrameRange;
  /** How far ahead of a forward walk frames are decoded though there is no hurry. */
  readonly eagerAhead: number;
  /** Of those worth holding, a second to both sides: where the coach stops it comes before all else. */
  readonly around: FrameRange;
}

/** What a plan has to go by. */
export interface HoldNeeds {
  readonly walk: Walk;
  readonly frames: number;
  /** Pictures at full resolution that fit, and how many of half size fit in the room of one. */
  readonly capacity: number;
  readonly halvesToWhole: number;
  /** Frames the coach may want at any moment (`neighbourhood`). */
  readonly wanted: number;
  /** Frames in a second of the film. */
  readonly second: number;
  /** Nothing has been asked for lately: there is time to fetch what is around. */
  readonly rested: boolean;
}

/** A second to both sides, and the group before the present one: what may be wanted before it could be decoded anew. */
export function neighbourhood(rate: number, { keyOfFrame }: PictureOrder): number {
  const sizes = new Map<number, number>();
  for (const key of keyOfFrame) sizes.set(key, (sizes.get(key) ?? 0) + 1);
  const longest = Math.max(1, ...sizes.values());
  return Math.ceil(Math.max(2 * rate + 16, 2.4 * longest));
}

/** Around a place where the coach rests or walks backward, frames held whole; fewer where pictures are huge. */
const wholeNear = 48;
const wholeNearShare = 0.4;
/** Of the room for whole pictures, what a forward walk keeps whole: it is decoded just before it is needed. */
const wholeForwardShare = 0.5;

/**
 * Where the whole neighbourhood fits, everything is held at full resolution. Else what is near is, and the rest at half
 * size: a walk then finds its pictures at once, and the picture is whole again where the coach stops.
 */
export function holdPlan(needs: HoldNeeds): HoldPlan {
  const { walk, frames, capacity, halvesToWhole, wanted, second, rested } = needs;
  const { playhead, towards } = walk;
  const planOf = (range: FrameRange, whole: FrameRange, eagerTo = range.last): HoldPlan => ({
    range,
    whole,
    eagerAhead: eagerTo - playhead,
    around: {
      first: Math.max(range.first, playhead - second),
      last: Math.min(range.last, playhead + second),
    },
  });
  if (capacity >= Math.min(wanted, frames) || halvesToWhole <= 1) {
    const range = rested ? bothWays(playhead, capacity, frames) : holdingRange(walk, capacity, frames);
    return planOf(range, range);
  }
  const near =
    towards > 0 && !rested
      ? Math.floor(capacity * wholeForwardShare)
      : Math.min(wholeNear, Math.floor(capacity * wholeNearShare));
  const far = Math.min(frames, near + Math.floor((capacity - near) * halvesToWhole));
  const whole = holdingRange(walk, near, frames);
  if (rested) return planOf(bothWays(playhead, far, frames), whole);
  if (towards > 0) return planOf(bothWays(playhead, far, frames), whole, whole.last);
  return planOf(holdingRange(walk, far, frames), whole);
}

/** As many frames to both sides; at a clip's end the rest goes to the other side. */
function bothWays(playhead: number, room: number, frames: number): FrameRange {
  const count = Math.min(room, frames);
  const first = Math.max(0, Math.min(playhead - Math.floor(count / 2), frames - count));
  return { first, last: first + count - 1 };
}
