import { type PicturePoint, picturePoint } from '#core/units/brand';
import type { Size } from './stage-view';

/** The nearest place in the picture, its edges included: a mark can be dragged to the edge and no farther. */
export function heldInPicture(
  { x, y }: { readonly x: number; readonly y: number },
  { width, height }: Size,
): PicturePoint {
  return picturePoint(Math.min(width, Math.max(0, x)), Math.min(height, Math.max(0, y)));
}

/** Whether a place is farther from the picture than a hand may miss its edge by; picture pixels. */
export function isPastEdge(point: PicturePoint, picture: Size, reach: number): boolean {
  const nearest = heldInPicture(point, picture);
  return Math.hypot(point.x - nearest.x, point.y - nearest.y) > reach;
}
