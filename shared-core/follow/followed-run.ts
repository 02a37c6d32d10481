import type { Sightings } from './blend-sightings';
import { type PointDoubt, pointDoubt, runConfidences } from './point-confidence';
import type { LandmarkName } from '../marks/landmark';
import type { FollowedRun } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import type { LandmarkSpan, Piece } from './piece';

/** What was found between the marks of a piece. */
export interface FollowedPiece {
  readonly runs: readonly FollowedRun[];
}

/** All that was seen of a piece, by index: going forward and backward, what both put, and where all was laid in the end. */
export interface SeenPiece {
  readonly forward: readonly Sightings[];
  readonly backward: readonly Sightings[];
  readonly settled: readonly Sightings[];
  blendedOn(index: number, landmark: LandmarkName): Point | null;
}

/** A landmark's points between two of its marks, as they are kept, with their confidence. Null when nothing was seen there. */
export function followedRun(
  piece: Piece,
  { landmark, from, to }: LandmarkSpan,
  { forward, backward, settled, blendedOn }: SeenPiece,
): FollowedRun | null {
  const { bodyLength, pictures, times } = piece;
  const secondsBetweenMarks = (times[to] as number) - (times[from] as number);
  const places: Point[] = [];
  const doubts: PointDoubt[] = [];
  for (let i = from + 1; i < to; i++) {
    const [f, b, s] = [forward, backward, settled].map((each) => each[i]?.get(landmark));
    if (!f || !b || !s) break;
    places.push(s.at);
    const spread = pointDoubt({
      ...{ landmark, forward: f, backward: b, settled: s, blended: blendedOn(i, landmark) ?? s.at },
      ...{ secondsBetweenMarks, shownShare: shownShare(piece, i, landmark, settled[i]), bodyLength },
    });
    doubts.push({ spread, strange: s.residual });
  }
  if (places.length === 0) return null;
  const confidences = runConfidences(doubts, times.slice(from + 1, from + 1 + places.length));
  return {
    landmark,
    frame: (pictures[0]?.frame ?? 0) + from + 1,
    points: places.map(({ x, y }, k) => [x, y, round(confidences[k] as number)]),
  };
}

/** How long the landmark's limbs look against the longest they were marked, the least of them. */
function shownShare(
  piece: Piece,
  index: number,
  landmark: LandmarkName,
  laid: Sightings | undefined,
): number {
  const shares = piece.lengthsOn(index).flatMap(({ from, to, most }) => {
    const [a, b] = [laid?.get(from)?.at, laid?.get(to)?.at];
    if ((from !== landmark && to !== landmark) || !a || !b || !(most > 0)) return [];
    return [Math.hypot(a.x - b.x, a.y - b.y) / most];
  });
  return Math.min(1, ...shares);
}

/** A thousandth is finer than any confidence is known, and still tells the sure from the very sure. */
const round = (value: number): number => Math.round(1000 * value) / 1000;
