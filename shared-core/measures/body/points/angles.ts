import type { Point } from '../../../units/point';

const degree = 180 / Math.PI;

/** An angle in degrees brought within half a turn of another: in (near − 180, near + 180]. */
export function turnedTo(near: number, angle: number): number {
  return angle - 360 * Math.ceil((angle - near) / 360 - 0.5);
}

/**
 * The direction about which angles in degrees lie, in (−180, 180]: that of the sum of their unit vectors, which knows no place
 * where a turn begins. Null of none, or of angles that cancel each other.
 *
 * @see Mardia, Jupp 2000, Directional Statistics, § 2.2 (from memory)
 */
export function circularMean(angles: readonly number[]): number | null {
  let [x, y] = [0, 0];
  for (const angle of angles) {
    x += Math.cos(angle / degree);
    y += Math.sin(angle / degree);
  }
  return Math.hypot(x, y) > 1e-9 * angles.length ? Math.atan2(y, x) * degree : null;
}

/** Straight distance. A plain root: `Math.hypot` guards against overflow, which costs ten times as much. */
export function distance(a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/**
 * Angle at a joint, degrees, turning from the first arm to the second counter-clockwise (side 1) or clockwise (side
 * −1), y up, in (−90, 270]: straight is 180, and a joint bent past straight reads above 180 and does not fold back.
 * Null when either point lies on the joint.
 */
export function turnedAngle(first: Point, joint: Point, second: Point, side: 1 | -1): number | null {
  const ax = first.x - joint.x;
  const ay = first.y - joint.y;
  const bx = second.x - joint.x;
  const by = second.y - joint.y;
  if ((ax === 0 && ay === 0) || (bx === 0 && by === 0)) return null;
  const turn = side * Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * degree;
  return turn <= -90 ? turn + 360 : turn;
}

/** Direction from one point to another above the way of travel, degrees in (−180, 180]; null when they coincide. */
export function directionAngle(from: Point, to: Point): number | null {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  if (dx === 0 && dy === 0) return null;
  return Math.atan2(dy, dx) * degree;
}

/** Height of a point above the line from a to b, square to it, taken with that line running along x; null when a = b. */
export function heightAboveLine(point: Point, a: Point, b: Point): number | null {
  const flip = b.x < a.x ? -1 : 1;
  const dx = flip * (b.x - a.x);
  const dy = flip * (b.y - a.y);
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return null;
  return ((point.y - a.y) * dx - (point.x - a.x) * dy) / length;
}
