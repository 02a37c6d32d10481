import type { Vision } from './vision';
import type { CameraRun, FollowedRun } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { cameraMoves } from './camera-moves';
import type { PieceTask } from './piece';

/** What the camera did over a piece whose points are followed: the swimmer is left out of the background. */
export function cameraOf(
  vision: Vision,
  { wholes = [], marks, bodyLength }: PieceTask,
  runs: readonly FollowedRun[],
): CameraRun | null {
  const bodyOn = (frame: number): readonly Point[] => [
    ...marks.filter((mark) => mark.frame === frame),
    ...runs.flatMap((run): readonly Point[] => {
      const point = run.points[frame - run.frame];
      return point ? [{ x: point[0], y: point[1] }] : [];
    }),
  ];
  return cameraMoves(vision, wholes, bodyOn, bodyLength);
}
