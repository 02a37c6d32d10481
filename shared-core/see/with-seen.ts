import type { LandmarkName } from '../marks/landmark';
import type { Posture, SeenRun } from '../swim-file/swim-schema';

type Points = Pick<Posture, 'frame' | 'points'>;

/** A landmark's points and, on frames without one, the seen ones; ascending by frame. */
export function withSeen(
  known: readonly Points[],
  seen: readonly SeenRun[],
  landmark: LandmarkName,
): readonly Points[] {
  const there = new Set(known.filter(({ points }) => points[landmark]).map(({ frame }) => frame));
  const more = seen.flatMap((run): Points[] =>
    run.landmark === landmark
      ? run.points.flatMap(([x, y], i): Points[] =>
          there.has(run.frame + i) ? [] : [{ frame: run.frame + i, points: { [landmark]: { x, y } } }],
        )
      : [],
  );
  return more.length === 0 ? known : [...known, ...more].sort((a, b) => a.frame - b.frame);
}
