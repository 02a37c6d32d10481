import { type SeenByFrame, seenByFrame } from '#core/follow/seen-points';
import type { Swim } from '#core/swim-file/swim-schema';
import { remembered } from './selectors';

const byFrame = remembered((seen: Swim['seen']) => seenByFrame(seen));
/** Seen points by frame and landmark. */
export const seenOf = (swim: Swim): SeenByFrame => byFrame(swim.seen);
