import type { Vision } from './vision';
import { blendSightings, varianceOfSightings } from './blend-sightings';
import { greyPyramid } from './grey-pyramid';
import { smoothTrack } from './smooth-track';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { backgroundPath } from './background-path';
import { coarseTask, fineFound } from './coarse-task';
import { followPass } from './follow-pass';
import { type FollowedPiece, followedRun } from './followed-run';
import { contrastPictures } from './learn-contrast';
import { type LandmarkSpan, makePiece, type Piece, type PieceTask } from './piece';
import { settlePiece } from './settle-piece';

/** Sizes of the picture limbs are laid on: full, half, quarter, eighth. */
const levels = 4;

/**
 * Follows every landmark between its marks: forward and backward through the pictures, blended, smoothed, and
 * laid all together from there. Gives runs of frames between marks; the marked frames themselves are the coach's and are
 * not in them. `tick` is called after each picture of each way and of each laying.
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
  const blendedOn = (i: number, name: LandmarkName): Point | null => blended.get(name)?.get(i) ?? null;
  const settled = settlePiece(task, pictures, pyramids, piece, camera, blendedOn, tick);
  const runs = spans.flatMap(
    (span) => followedRun(piece, span, { forward, backward, settled, blendedOn }) ?? [],
  );
  return fineFound({ runs }, step);
}

/** The inner places of a span from noisy ones, the marks at its ends held; without a place a frame is bridged. */
function smoothed(
  piece: Piece,
  { landmark, from, to }: LandmarkSpan,
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
  return times.slice(1, -1).map((_, k) => ({ x: across[k + 1] as number, y: down[k + 1] as number }));
}
