import { blendSightings, varianceOfSightings } from '#core/follow/blend-sightings';
import { pointConfidence } from '#core/follow/point-confidence';
import { greyPyramid } from '#core/follow/grey-pyramid';
import { smoothTrack } from '#core/follow/smooth-track';
import type { LandmarkName } from '#core/marks/landmark';
import type { FollowedRun } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/brand';
import { backgroundPath } from './background-path';
import { coarseTask, fineFound } from './coarse-task';
import { followPass, type Sightings } from './follow-pass';
import { contrastPictures } from './learn-contrast';
import { makePiece, type Piece, type PieceTask } from './piece';
import { settleBodies } from './settle-bodies';
import type { Vision } from './vision';

/** Sizes of the picture limbs are laid on: full, half, quarter, eighth. */
const levels = 4;

/** What was found between the marks of a piece. */
export interface FollowedPiece {
  readonly runs: readonly FollowedRun[];
}

interface Span {
  readonly landmark: LandmarkName;
  readonly from: number;
  readonly to: number;
}

/**
 * Follows every landmark between its marks: forward and backward through the pictures, blended, laid once more from
 * there, smoothed. Gives runs of frames between marks; the marked frames themselves are the coach's and are not in
 * them. `tick` is called after each picture of each way.
 */
export function followPiece(vision: Vision, whole: PieceTask, tick: () => void): FollowedPiece {
  const { step } = whole;
  const task = coarseTask(whole, step);
  const pictures = contrastPictures(task.pictures, task.marks, task.bodyLength);
  const pyramids = pictures.map(({ width, height, grey }) =>
    greyPyramid(width, height, grey, step > 1 ? levels - 1 : levels),
  );
  const piece = makePiece(task, pictures, pyramids);
  const camera = backgroundPath(vision, piece, pyramids);
  const forward = followPass(vision, piece, pyramids, camera, 1, tick);
  const backward = followPass(vision, piece, pyramids, camera, -1, tick);
  const spans = piece.spans();
  const blended = new Map<LandmarkName, Map<number, Point>>();
  for (const span of spans) {
    const own = blended.get(span.landmark) ?? new Map<number, Point>();
    blended.set(span.landmark, own);
    const { from, to, landmark } = span;
    smoothed(piece, span, (i) => {
      const f = forward[i]?.get(landmark);
      const b = backward[i]?.get(landmark);
      if (!f || !b) return null;
      const variance = varianceOfSightings(f, b, f.residual < b.residual ? f : b, piece.bodyLength);
      return { at: blendSightings(f, b, (i - from) / (to - from)), variance };
    }).forEach((point, k) => {
      own.set(from + 1 + k, point);
    });
  }
  const settled = settleBodies(piece, pyramids, camera, (i, name) => blended.get(name)?.get(i) ?? null);
  const runs = spans.flatMap((span) => runOf(piece, span, forward, backward, settled, blended));
  return fineFound({ runs }, step);
}

/** The inner places of a span from noisy ones, the marks at its ends held; without a place a frame is bridged. */
function smoothed(
  piece: Piece,
  { landmark, from, to }: Span,
  placeOn: (index: number) => { readonly at: Point; readonly variance: number } | null,
): readonly Point[] {
  const x: number[] = [];
  const y: number[] = [];
  const variances: number[] = [];
  for (let i = from; i <= to; i++) {
    const mark = piece.mark(i, landmark);
    const place = mark ? { at: mark, variance: 0.01 } : placeOn(i);
    x.push(place?.at.x ?? 0);
    y.push(place?.at.y ?? 0);
    variances.push(place?.variance ?? Infinity);
  }
  const times = piece.times.slice(from, to + 1);
  const acceleration = piece.acceleration(landmark);
  const across = smoothTrack(times, x, variances, acceleration).values;
  const down = smoothTrack(times, y, variances, acceleration).values;
  return times.slice(1, -1).map((_, k) => ({ x: across[k + 1] ?? 0, y: down[k + 1] ?? 0 }));
}

function runOf(
  piece: Piece,
  span: Span,
  forward: readonly Sightings[],
  backward: readonly Sightings[],
  settled: readonly Sightings[],
  blended: ReadonlyMap<LandmarkName, ReadonlyMap<number, Point>>,
): FollowedRun[] {
  const { landmark, from } = span;
  const { bodyLength, pictures } = piece;
  const secondsBetweenMarks = (piece.times[span.to] ?? 0) - (piece.times[from] ?? 0);
  const confidenceOn = (i: number): number => {
    const [f, b, s] = [forward, backward, settled].map((each) => each[i]?.get(landmark));
    if (!f || !b || !s) return 0;
    const along = blended.get(landmark)?.get(i) ?? s.at;
    return pointConfidence({
      ...{ landmark, forward: f, backward: b, blended: along, settled: s },
      ...{ secondsBetweenMarks, bodyLength },
    });
  };
  const points: [number, number, number][] = [];
  for (let i = from + 1; i < span.to; i++) {
    const at = settled[i]?.get(landmark)?.at;
    if (!at) break;
    points.push([at.x, at.y, round(confidenceOn(i))]);
  }
  return points.length > 0 ? [{ landmark, frame: (pictures[0]?.frame ?? 0) + from + 1, points }] : [];
}

/** A thousandth is finer than any confidence is known, and still tells the sure from the very sure. */
const round = (value: number): number => Math.round(1000 * value) / 1000;
