import type { FrameRange } from '#core/timeline/frame-range';
import type { PictureOrder } from '#core/timeline/picture-order';

/** Where the coach is and which way the walk goes. */
export interface Walk {
  readonly playhead: number;
  readonly towards: -1 | 0 | 1;
}

/** Where a running decoder stands: fed from `start` up to, not including, `next` (decoding order). */
export interface RunPlace {
  readonly start: number;
  readonly next: number;
}

/** Share of the held pictures that lies in the direction of travel. */
const aheadShare = 0.75;
/** A decoder's restart costs about as much as decoding this many pictures (40 ms against 5 ms at 1080p, measured). */
const restartCost = 8;
/** On the side away from the travel, pictures are fetched only when fewer than this many are left. */
const trailingLowWater = 8;
/** A walk may go somewhat faster than decoding: what is not there is begun this many times earlier than it takes. */
const haste = 1.3;

/** After a jump, frames worth holding around it: enough to begin a walk either way while more are decoded. */
const jumpBehind = 24;
const jumpAhead = 48;

/**
 * The frames worth decoding and holding: mostly ahead of the walk, some behind it; at a clip's end the rest goes to the
 * other side. After a jump fewer, so that holding what is passed on the way there does not slow the jump.
 */
export function holdingRange({ playhead, towards }: Walk, capacity: number, frames: number): FrameRange {
  const room = Math.max(0, capacity - 1);
  if (towards === 0) {
    const behind = Math.min(jumpBehind, Math.floor(room / 2));
    return {
      first: Math.max(0, playhead - behind),
      last: Math.min(frames - 1, playhead + Math.min(jumpAhead, room - behind)),
    };
  }
  const ahead = Math.floor(room * aheadShare);
  const [below, above] = towards < 0 ? [ahead, room - ahead] : [room - ahead, ahead];
  const spareAbove = Math.max(0, playhead + above - (frames - 1));
  const spareBelow = Math.max(0, below - playhead);
  return {
    first: Math.max(0, playhead - below - spareAbove),
    last: Math.min(frames - 1, playhead + above + spareBelow),
  };
}

/** Whether a frame still comes out of a run when it is simply fed on, for less than starting anew. */
export function comesFrom(run: RunPlace | null, order: PictureOrder, frame: number): boolean {
  if (!run) return false;
  const coded = order.codedOfFrame[frame] ?? -1;
  const key = order.keyOfFrame[frame] as number;
  return coded >= run.next && key >= run.start && key <= run.next + restartCost;
}

/**
 * The frame to decode next, or null when nothing is worth decoding now. In this order: the frame asked for; what is
 * missing in the direction of travel; the frames right behind. `isThere` says a frame is held, on its way, or known
 * to be undecodable.
 *
 * What a running decoder gives by being fed on is always taken, ahead of a forward walk as far as `eagerAhead`. A new run
 * costs a whole group of pictures, so it begins only when less than half of the pictures ahead is left, or when there is
 * room for most of what it gives: early enough for a walk, rarely enough to not decode a group again for every single step.
 * What lies farther ahead than `eagerAhead` is fetched in time for a walk that goes as fast as decoding.
 */
export function nextFrameToDecode(
  walk: Walk,
  range: FrameRange,
  order: PictureOrder,
  run: RunPlace | null,
  isThere: (frame: number) => boolean,
  eagerAhead = range.last - walk.playhead,
): number | null {
  const { playhead, towards } = walk;
  if (!isThere(playhead)) return playhead;
  const above = firstMissing(playhead + 1, range.last, 1, isThere);
  const below = firstMissing(playhead - 1, range.first, -1, isThere);
  const roomBelow = playhead - range.first;
  const inTime = (frame: number): boolean =>
    frame - playhead <= Math.max(eagerAhead / 2, haste * picturesTo(frame, order, run));
  const lowAbove = above !== null && (towards < 0 ? above - playhead <= trailingLowWater : inTime(above));
  const lowBelow =
    below !== null &&
    (towards > 0
      ? playhead - below <= trailingLowWater
      : playhead - below <= roomBelow / 2 || isWorthARun(below, range, order));
  const takeAbove =
    above !== null && (lowAbove || (above - playhead <= eagerAhead && comesFrom(run, order, above)));
  const takeBelow = below !== null && (lowBelow || comesFrom(run, order, below));
  if (towards < 0) return takeBelow ? below : takeAbove ? above : null;
  return takeAbove ? above : takeBelow ? below : null;
}

/** What is missing nearest to a place where the coach has stopped: what a running decoder gives, else in the direction of travel. */
export function nearestMissing(
  { playhead, towards }: Walk,
  around: FrameRange,
  order: PictureOrder,
  run: RunPlace | null,
  isThere: (frame: number) => boolean,
): number | null {
  const above = firstMissing(playhead + 1, around.last, 1, isThere);
  const below = firstMissing(playhead - 1, around.first, -1, isThere);
  for (const frame of [above, below]) if (frame !== null && comesFrom(run, order, frame)) return frame;
  return towards < 0 ? (below ?? above) : (above ?? below);
}

/** How many pictures have to be decoded until this frame comes. */
function picturesTo(frame: number, order: PictureOrder, run: RunPlace | null): number {
  const coded = order.codedOfFrame[frame] as number;
  if (run && comesFrom(run, order, frame)) return coded - run.next + 1;
  return restartCost + coded - (order.keyOfFrame[frame] as number) + 1;
}

/** Whether at least half of the pictures decoded on the way to `frame` are worth holding. */
function isWorthARun(frame: number, { first }: FrameRange, order: PictureOrder): boolean {
  const cost = (order.codedOfFrame[frame] as number) - (order.keyOfFrame[frame] as number) + 1;
  return 2 * Math.min(frame - first + 1, cost) >= cost;
}

function firstMissing(
  from: number,
  to: number,
  step: -1 | 1,
  isThere: (frame: number) => boolean,
): number | null {
  for (let frame = from; step > 0 ? frame <= to : frame >= to; frame += step) {
    if (!isThere(frame)) return frame;
  }
  return null;
}
