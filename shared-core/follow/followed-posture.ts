import type { LandmarkName } from '../marks/landmark';
import type { FollowedRun } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { keptWith } from '../units/kept-with';

export interface FollowedPoint extends Point {
  readonly confidence: number;
}

/** Followed points by frame, then landmark. Cost: linear in points. */
export type FollowedByFrame = ReadonlyMap<number, ReadonlyMap<LandmarkName, FollowedPoint>>;

function followedByFrame(followed: readonly FollowedRun[]): FollowedByFrame {
  const frames = new Map<number, Map<LandmarkName, FollowedPoint>>();
  for (const { landmark, frame, points } of followed) {
    points.forEach(([x, y, confidence], i) => {
      const own = frames.get(frame + i) ?? new Map<LandmarkName, FollowedPoint>();
      own.set(landmark, { x, y, confidence });
      frames.set(frame + i, own);
    });
  }
  return frames;
}

/** The same, worked out once for runs that don't change. */
export const followedBodies = keptWith(followedByFrame);
