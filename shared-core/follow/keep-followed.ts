import type { LandmarkName } from '../marks/landmark';
import type { FollowedRun } from '../swim-file/swim-schema';
import type { FramePiece } from './follow-pieces';

/**
 * The followed runs after `pieces` were followed anew: what was followed there before goes, what lies outside stays
 * (runs are cut where they cross), the new runs come in. Sorted by landmark as given, then frame.
 */
export function keepFollowed(
  before: readonly FollowedRun[],
  pieces: readonly FramePiece[],
  fresh: readonly FollowedRun[],
): readonly FollowedRun[] {
  const kept = pieces.reduce<readonly FollowedRun[]>(
    (runs, piece) => runs.flatMap((run) => cutOut(run, piece)),
    before,
  );
  return [...kept, ...fresh].sort((a, b) => a.frame - b.frame || a.landmark.localeCompare(b.landmark));
}

/** What is left of a run outside a piece's inner frames. */
function cutOut(run: FollowedRun, { first, last }: FramePiece): FollowedRun[] {
  const end = run.frame + run.points.length - 1;
  if (end < first || run.frame > last) return [run];
  const before = run.points.slice(0, Math.max(0, first - run.frame + 1));
  const afterFrom = Math.max(run.frame, last);
  const after = run.points.slice(afterFrom - run.frame);
  return [
    ...(run.frame < first && before.length > 0 ? [{ ...run, points: before }] : []),
    ...(end > last && after.length > 0 ? [{ ...run, frame: afterFrom, points: after }] : []),
  ];
}

/** Pieces that have never been followed, or that hold a mark the coach has made since. */
export function piecesToFollow(
  pieces: readonly FramePiece[],
  followed: readonly FollowedRun[],
  isMarked: (landmark: LandmarkName, frame: number) => boolean,
): readonly FramePiece[] {
  return pieces.filter(({ first, last }) => {
    const inside = followed.filter((run) => run.frame > first && run.frame < last);
    if (inside.length === 0) return true;
    return inside.some((run) => run.points.some((_, i) => isMarked(run.landmark, run.frame + i)));
  });
}
