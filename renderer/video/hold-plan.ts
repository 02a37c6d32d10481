import type { PictureOrder } from '#core/timeline/picture-order';
import { holdingRange, type Walk } from './decoding-plan';
import type { HoldingRange } from './picture-cache';

/** What is worth holding now. */
export interface HoldPlan {
  /** Frames worth holding at all. */
  readonly range: HoldingRange;
  /** Of those, the ones worth holding at full resolution. */
  readonly whole: HoldingRange;
  /** How far ahead of a forward walk frames are decoded though there is no hurry. */
  readonly eagerAhead: number;
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
  const { walk, frames, capacity, halvesToWhole, wanted, rested } = needs;
  const { playhead, towards } = walk;
  if (capacity >= Math.min(wanted, frames) || halvesToWhole <= 1) {
    const range = holdingRange(walk, capacity, frames);
    return { range, whole: range, eagerAhead: range.last - playhead };
  }
  const near =
    towards > 0
      ? Math.floor(capacity * wholeForwardShare)
      : Math.min(wholeNear, Math.floor(capacity * wholeNearShare));
  const far = Math.min(frames, near + Math.floor((capacity - near) * halvesToWhole));
  const whole = holdingRange(walk, near, frames);
  if (towards < 0) {
    const range = holdingRange(walk, far, frames);
    return { range, whole, eagerAhead: range.last - playhead };
  }
  if (towards === 0 && !rested) {
    const range = holdingRange(walk, far, frames);
    return { range, whole, eagerAhead: range.last - playhead };
  }
  const behind = Math.floor(far / 2);
  const first = Math.max(0, Math.min(playhead - behind, frames - far));
  const range = { first, last: Math.min(frames - 1, first + far - 1) };
  return { range, whole, eagerAhead: towards > 0 ? whole.last - playhead : range.last - playhead };
}
