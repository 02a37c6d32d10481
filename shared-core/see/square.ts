import type { Point } from '../units/point';

/** A turned square of the shown picture. Its own "up" points from the hips to the head or the feet, as the network wants it. */
export interface Square {
  /** Its middle, pixels of the shown picture. */
  readonly x: number;
  readonly y: number;
  /** Pixels. */
  readonly side: number;
  /** How far "up" is turned clockwise from the picture's up, radians. */
  readonly angle: number;
}

/** Room around the circle that the two points span. From the network's own published use. */
const room = 1.25;

/** The square that two points ask for: the middle of the hips, and how far and which way the body reaches from there. */
export function squareOf(middle: Point, reach: Point): Square {
  const dx = reach.x - middle.x;
  const dy = reach.y - middle.y;
  return {
    x: middle.x,
    y: middle.y,
    side: 2 * room * Math.hypot(dx, dy),
    angle: Math.atan2(dx, -dy),
  };
}

/** Where a place of a square lies in the picture; `u` and `v` go from 0 to 1, right and down in the square. */
export function fromSquare({ x, y, side, angle }: Square, u: number, v: number): Point {
  const across = side * (u - 0.5);
  const down = side * (v - 0.5);
  return {
    x: x + across * Math.cos(angle) - down * Math.sin(angle),
    y: y + across * Math.sin(angle) + down * Math.cos(angle),
  };
}

/** Where a picture's point lies in a square, 0 to 1 inside; inverse of `fromSquare`. */
export function intoSquare(
  { x, y, side, angle }: Square,
  point: Point,
): { readonly u: number; readonly v: number } {
  const dx = point.x - x;
  const dy = point.y - y;
  return {
    u: 0.5 + (dx * Math.cos(angle) + dy * Math.sin(angle)) / side,
    v: 0.5 + (dy * Math.cos(angle) - dx * Math.sin(angle)) / side,
  };
}

/** How much of the smaller of two squares' inner circles the other covers, about: 1 on top of each other, 0 apart. */
export function squaresMeet(a: Square, b: Square): number {
  const apart = Math.hypot(a.x - b.x, a.y - b.y);
  return Math.max(0, 1 - apart / (0.5 * Math.min(a.side, b.side)));
}
