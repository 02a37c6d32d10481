import { sureEnough } from '../follow/follow-confidence';
import type { LandmarkName } from '../marks/landmark';
import { hasPoint } from '../swim-file/has-point';
import type { Posture, Swim } from '../swim-file/swim-schema';
import type { Point } from '../units/point';

/** A body line to be drawn, and which of its points the machine followed: those must look it. */
export interface ShownLine extends Posture {
  readonly followed: readonly LandmarkName[];
}

/**
 * The body line of every frame that has one: the coach's points, and where the coach laid none on a frame, the surely
 * followed ones. A point the coach said is hidden stays away. Cost: linear in points.
 */
export function shownLines(swim: Pick<Swim, 'postures' | 'followed'>): ReadonlyMap<number, ShownLine> {
  const lines = new Map(
    // one that only says what is hidden is kept until the followed points are in, then dropped
    swim.postures.map((posture): [number, ShownLine] => [posture.frame, { ...posture, followed: [] }]),
  );
  for (const { landmark, frame, points } of swim.followed)
    points.forEach(([x, y, confidence], index) => {
      if (confidence < sureEnough) return;
      const own = lines.get(frame + index) ?? { frame: frame + index, points: {}, hidden: [], followed: [] };
      if (own.points[landmark] || own.hidden.includes(landmark)) return;
      lines.set(frame + index, {
        ...own,
        points: { ...own.points, [landmark]: { x, y } },
        followed: [...own.followed, landmark],
      });
    });
  for (const [frame, line] of lines) if (!hasPoint(line)) lines.delete(frame);
  return lines;
}

/** A posture with every point moved. */
export function movedPosture<Line extends Posture>(posture: Line, move: (point: Point) => Point): Line {
  const points = Object.fromEntries(
    Object.entries(posture.points).map(([name, point]) => [name, move(point)]),
  );
  return { ...posture, points };
}
