import { type LandmarkName, landmarkNames } from '../marks/landmark';
import type { Posture } from '../swim-file/swim-schema';
import type { Point } from '../units/point';

/** A point the coach placed. */
export interface MarkedPoint extends Point {
  readonly frame: number;
  readonly landmark: LandmarkName;
}

/** Every placed point of the postures from `first` to `last`, both included, by frame, fingertip to toe. */
export function markedPoints(
  postures: readonly Posture[],
  first = Number.NEGATIVE_INFINITY,
  last = Number.POSITIVE_INFINITY,
): readonly MarkedPoint[] {
  return [...postures]
    .filter(({ frame }) => frame >= first && frame <= last)
    .sort((a, b) => a.frame - b.frame)
    .flatMap(({ frame, points }) =>
      landmarkNames.flatMap((landmark): MarkedPoint[] => {
        const point = points[landmark];
        return point ? [{ frame, landmark, x: point.x, y: point.y }] : [];
      }),
    );
}
