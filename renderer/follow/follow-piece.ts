import { blendSightings } from '#core/follow/blend-sightings';
import { confidenceOfSd } from '#core/follow/follow-confidence';
import { greyPyramid } from '#core/follow/grey-pyramid';
import { smoothTrack } from '#core/follow/smooth-track';
import type { LandmarkName } from '#core/marks/landmark';
import type { FollowedRun } from '#core/swim-file/swim-schema';
import { followPass, type Sightings } from './follow-pass';
import { makePiece, type Piece, type PieceTask } from './piece';
import type { Vision } from './vision';

/** Sizes of the picture limbs are laid on: full, half, quarter, eighth. */
const levels = 4;

/**
 * Follows every landmark between its marks: forward and backward through the pictures, blended, smoothed. Gives runs
 * of frames between marks; the marked frames themselves are the coach's and are not in them. `tick` is called after
 * each picture of each way.
 */
export function followPiece(vision: Vision, task: PieceTask, tick: () => void): readonly FollowedRun[] {
  const pyramids = task.pictures.map(({ width, height, grey }) => greyPyramid(width, height, grey, levels));
  const piece = makePiece(task, pyramids);
  const forward = followPass(vision, piece, pyramids, 1, tick);
  const backward = followPass(vision, piece, pyramids, -1, tick);
  return piece.spans().flatMap(({ landmark, from, to }) => {
    const run = followedBetween(piece, landmark, from, to, forward, backward);
    return run ? [run] : [];
  });
}

function followedBetween(
  piece: Piece,
  landmark: LandmarkName,
  from: number,
  to: number,
  forward: readonly Sightings[],
  backward: readonly Sightings[],
): FollowedRun | null {
  const { bodyLength, times, pictures } = piece;
  const x: number[] = [];
  const y: number[] = [];
  const variances: number[] = [];
  for (let i = from; i <= to; i++) {
    const mark = piece.mark(i, landmark);
    const f = forward[i]?.get(landmark);
    const b = backward[i]?.get(landmark);
    if (mark || !f || !b) {
      x.push(mark?.x ?? 0);
      y.push(mark?.y ?? 0);
      variances.push(mark ? 0.01 : Infinity);
      continue;
    }
    const { at, variance } = blendSightings(f, b, (i - from) / (to - from), bodyLength);
    x.push(at.x);
    y.push(at.y);
    variances.push(variance);
  }
  const own = times.slice(from, to + 1);
  const acceleration = piece.acceleration(landmark);
  const smoothX = smoothTrack(own, x, variances, acceleration);
  const smoothY = smoothTrack(own, y, variances, acceleration);
  const points = own.slice(1, -1).map((_, k): [number, number, number] => {
    const i = k + 1;
    // a smoother takes the errors of neighbouring pictures as independent, which they are not: the blend's own stays
    const sd = Math.sqrt(Math.min(variances[i] ?? Infinity, 1e9));
    return [
      round(smoothX.values[i] ?? 0),
      round(smoothY.values[i] ?? 0),
      round(confidenceOfSd(sd, bodyLength)),
    ];
  });
  const frame = (pictures[0]?.frame ?? 0) + from + 1;
  return points.length > 0 ? { landmark, frame, points } : null;
}

/** A hundredth of a pixel is finer than any mark. */
const round = (value: number): number => Math.round(100 * value) / 100;
