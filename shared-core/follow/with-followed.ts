import type { LandmarkName } from '../marks/landmark';
import type { FollowedRun, Posture } from '../swim-file/swim-schema';
import { sureEnough } from './follow-confidence';

type Points = Pick<Posture, 'frame' | 'points'>;

/** A landmark's marked points and, on frames between, the surely followed ones; ascending by frame. */
export function withFollowed(
  postures: readonly Points[],
  followed: readonly FollowedRun[],
  landmark: LandmarkName,
): readonly Points[] {
  const marked = new Set(postures.filter(({ points }) => points[landmark]).map(({ frame }) => frame));
  const guesses = followed.flatMap((run): Points[] =>
    run.landmark === landmark
      ? run.points.flatMap(([x, y, confidence], i): Points[] =>
          confidence >= sureEnough && !marked.has(run.frame + i)
            ? [{ frame: run.frame + i, points: { [landmark]: { x, y } } }]
            : [],
        )
      : [],
  );
  return guesses.length === 0 ? postures : [...postures, ...guesses].sort((a, b) => a.frame - b.frame);
}
