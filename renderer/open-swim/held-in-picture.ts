import type { Point } from '#core/units/point';
import type { Size } from './stage-view';

/** The nearest place in the picture, its edges included: a mark can be dragged to the edge and no farther. */
export function heldInPicture(
  { x, y }: { readonly x: number; readonly y: number },
  { width, height }: Size,
): Point {
  return { x: Math.min(width, Math.max(0, x)), y: Math.min(height, Math.max(0, y)) };
}

/** Whether a place is farther from the picture than a hand may miss its edge by; picture pixels. */
export function isPastEdge(point: Point, picture: Size, reach: number): boolean {
  const nearest = heldInPicture(point, picture);
  return Math.hypot(point.x - nearest.x, point.y - nearest.y) > reach;
}
