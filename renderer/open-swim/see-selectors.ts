import { type SeenByFrame, seenBodies } from '#core/follow/seen-points';
import type { Swim } from '#core/swim-file/swim-schema';

/** Seen points by frame and landmark. */
export const seenOf = (swim: Swim): SeenByFrame => seenBodies(swim.seen);
