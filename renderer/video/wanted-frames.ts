import type { FrameRange } from '#core/timeline/frame-range';
import type { PictureOrder } from '#core/timeline/picture-order';
import { nearestMissing, nextFrameToDecode, type RunPlace } from './decoding-plan';
import type { HoldPlan } from './hold-plan';
import { hasStopped, type Looking } from './looking-machine';

/** What is known when it is decided which frame to decode. */
export interface Wanting {
  readonly looking: Looking;
  readonly plan: HoldPlan;
  /** Neither held, in whatever size, nor being copied. */
  readonly isMissing: (frame: number) => boolean;
  /** Neither held at full resolution nor being copied. */
  readonly lacksWhole: (frame: number) => boolean;
}

export const isWithin = (frame: number, { first, last }: FrameRange): boolean =>
  frame >= first && frame <= last;

/** Not there as it is wanted now: at full resolution, or at half size where that will do. */
const lacks = ({ looking, isMissing, lacksWhole }: Wanting, frame: number): boolean =>
  looking.half ? isMissing(frame) : lacksWhole(frame);

/**
 * The frame to decode next, or null when there is nothing to decode now. `comes` says that a frame is on its way or can't be
 * decoded, `now` is the page's clock.
 */
export function nextWanted(
  wanting: Wanting,
  order: PictureOrder,
  run: RunPlace | null,
  comes: (frame: number) => boolean,
  now: number,
): number | null {
  const { looking, plan, lacksWhole } = wanting;
  const { walk } = looking;
  const { playhead } = walk;
  const stopped = hasStopped(looking);
  const isThere = (frame: number): boolean => !lacks(wanting, frame) || comes(frame);
  const isHere = !lacks(wanting, playhead);
  if (walk.towards === 0 && !stopped && isHere && now < looking.quietUntil) return null;
  // what the coach stays at and looks at closely comes before what may be wanted next
  if (stopped && lacksWhole(playhead) && !comes(playhead)) return playhead;
  const near = stopped && isHere ? nearestMissing(walk, plan.around, order, run, isThere) : null;
  if (near !== null) return near;
  const missing = nextFrameToDecode(walk, plan.range, order, run, isThere, plan.eagerAhead);
  if (missing !== null || !stopped) return missing;
  return nextFrameToDecode(walk, plan.whole, order, run, (frame) => !lacksWhole(frame) || comes(frame));
}

/** Whether a picture that comes out of the decoder is worth copying. */
export function isWanted(wanting: Wanting, frame: number): boolean {
  const { looking, plan, lacksWhole } = wanting;
  if (isWithin(frame, plan.range) && lacks(wanting, frame)) return true;
  return hasStopped(looking) && isWithin(frame, plan.whole) && lacksWhole(frame);
}

/** Whether it is worth emptying the decoder for a picture inside it. */
export function isNeededNow(wanting: Wanting, frame: number): boolean {
  const { looking, plan, lacksWhole } = wanting;
  if (frame > looking.walk.playhead) return false;
  if (frame >= plan.range.first && lacks(wanting, frame)) return true;
  return hasStopped(looking) && frame >= plan.whole.first && lacksWhole(frame);
}
