import { type LandmarkName, landmarkNames } from '../marks/landmark';
import type { FollowedRun, Posture } from '../swim-file/swim-schema';
import { sdOfConfidence } from './follow-confidence';
import type { FramePiece } from './follow-pieces';
import type { MarkedPoint } from './marked-points';

/** A point beside a piece that is known already, and how well: standard deviation of one axis, pixels. */
export interface KnownPoint extends MarkedPoint {
  readonly sd: number;
}

/** Four pictures in a row tell how the acceleration changes, so three beside a piece tell how it goes on. */
const reach = 3;
/** A coach's mark errs by about this share of the body length. Our default. */
const markedSdShare = 0.003;

/** What is known, marked or followed before, on the frames just before and after a piece. */
export function pointsAround(
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
  { first, last }: FramePiece,
  bodyLength: number,
): readonly KnownPoint[] {
  const beside = (frame: number): boolean =>
    (frame >= first - reach && frame < first) || (frame > last && frame <= last + reach);
  const known = new Map<string, KnownPoint>();
  const keep = (frame: number, landmark: LandmarkName, x: number, y: number, sd: number): void => {
    known.set(`${landmark}${frame}`, { frame, landmark, x, y, sd });
  };
  for (const run of followed)
    for (let frame = first - reach; frame <= last + reach; frame++) {
      const point = beside(frame) ? run.points[frame - run.frame] : undefined;
      if (point) keep(frame, run.landmark, point[0], point[1], sdOfConfidence(point[2], bodyLength));
    }
  for (const { frame, points } of postures)
    if (beside(frame))
      for (const landmark of landmarkNames) {
        const point = points[landmark];
        if (point) keep(frame, landmark, point.x, point.y, markedSdShare * bodyLength);
      }
  return [...known.values()].sort((a, b) => a.frame - b.frame);
}
