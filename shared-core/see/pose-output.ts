import type { Point } from '../units/point';
import { fromSquare, type Square, squareOf } from './square';

/** Side of the square that the landmark network takes, pixels. */
export const poseSize = 256;
/** Points it gives: 33 named ones, and two that tell the next square. */
const posePoints = 39;
const valuesEach = 5;
const middlePoint = 33;
const reachPoint = 34;

/** One point of the network in the shown picture, and how likely it is not hidden and there at all, 0 to 1. */
export interface PosePoint extends Point {
  readonly visible: number;
  readonly present: number;
}

/** What the network says of one square. */
export interface PoseOutput {
  /** How sure a body is there, 0 to 1. */
  readonly sure: number;
  /** The named points, by the network's number. */
  readonly points: readonly PosePoint[];
  /** The square in which to look on the next picture. */
  readonly next: Square;
}

const share = (logit: number): number => 1 / (1 + Math.exp(-logit));

/**
 * Reads the landmark network's first two outputs: 39 points × (x, y, depth, visible, present), places in pixels of the square, and
 * how sure it is of a body. Throws when the numbers are not as many as that network gives.
 */
export function readPose(values: ArrayLike<number>, sure: number, square: Square): PoseOutput {
  if (values.length !== posePoints * valuesEach)
    throw new Error(`the landmark network gave ${values.length} values, not ${posePoints * valuesEach}`);
  const points: PosePoint[] = [];
  for (let i = 0; i < posePoints; i++) {
    const at = valuesEach * i;
    const place = fromSquare(
      square,
      (values[at] as number) / poseSize,
      (values[at + 1] as number) / poseSize,
    );
    points.push({
      ...place,
      visible: share(values[at + 3] as number),
      present: share(values[at + 4] as number),
    });
  }
  const [middle, reach] = [points[middlePoint], points[reachPoint]];
  if (!middle || !reach) throw new Error('the landmark network gave no next square');
  return { sure, points: points.slice(0, middlePoint), next: squareOf(middle, reach) };
}

/** The network's numbers of what a landmark of ours is made of, left and right. */
export const poseNumbers = {
  ear: [7, 8],
  shoulder: [11, 12],
  elbow: [13, 14],
  wrist: [15, 16],
  indexBase: [19, 20],
  hip: [23, 24],
  knee: [25, 26],
  ankle: [27, 28],
  toeBase: [31, 32],
} as const;
