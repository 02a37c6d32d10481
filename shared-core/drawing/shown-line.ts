import { sureEnough } from '../follow/follow-confidence';
import type { LandmarkName } from '../marks/landmark';
import { hasPoint } from '../swim-file/has-point';
import type { Posture, Swim } from '../swim-file/swim-schema';
import type { Point } from '../units/point';

/** A body line to be drawn, and which of its points the machine followed, or saw without a mark: those must look it. */
export interface ShownLine extends Posture {
  readonly followed: readonly LandmarkName[];
  /** Nobody has reviewed them, and no number stands on them. */
  readonly seen: readonly LandmarkName[];
}

/**
 * The body line of every frame that has one: the coach's points, and where the coach laid none on a frame, the surely
 * followed ones, and where there are none of those either, the seen ones. A point the coach said is hidden stays away. Cost: linear in points.
 */
export function shownLines(
  swim: Pick<Swim, 'postures' | 'followed' | 'seen'>,
): ReadonlyMap<number, ShownLine> {
  const lines = new Map(
    // one that only says what is hidden is kept until the followed points are in, then dropped
    swim.postures.map((posture): [number, ShownLine] => [
      posture.frame,
      { ...posture, followed: [], seen: [] },
    ]),
  );
  const put = (frame: number, landmark: LandmarkName, at: Point, as: 'followed' | 'seen'): void => {
    const own = lines.get(frame) ?? { frame, points: {}, hidden: [], followed: [], seen: [] };
    if (own.points[landmark] || own.hidden.includes(landmark)) return;
    const points = { ...own.points, [landmark]: at };
    lines.set(frame, { ...own, points, [as]: [...own[as], landmark] });
  };
  for (const { landmark, frame, points } of swim.followed)
    points.forEach(([x, y, confidence], index) => {
      if (confidence >= sureEnough) put(frame + index, landmark, { x, y }, 'followed');
    });
  for (const { landmark, frame, points } of swim.seen)
    for (const [index, [x, y]] of points.entries()) put(frame + index, landmark, { x, y }, 'seen');
  for (const [frame, line] of lines) if (!hasPoint(line)) lines.delete(frame);
  return lines;
}

/** A line without what was only seen: for whatever is measured on it. */
export function withoutSeen<Line extends Posture & Partial<Pick<ShownLine, 'seen'>>>(line: Line): Line {
  const { seen = [] } = line;
  if (seen.length === 0) return line;
  const known = Object.entries(line.points).filter(([name]) => !seen.includes(name as LandmarkName));
  return { ...line, points: Object.fromEntries(known), seen: [] };
}

/** A posture with every point moved. */
export function movedPosture<Line extends Posture>(posture: Line, move: (point: Point) => Point): Line {
  const points = Object.fromEntries(
    Object.entries(posture.points).map(([name, point]) => [name, move(point)]),
  );
  return { ...posture, points };
}
