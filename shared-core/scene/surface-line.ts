import type { Scene } from '../swim-file/swim-schema';
import type { Point } from '../units/point';

export interface HeightAboveSurface {
  /** Pixels, square to the surface line; positive above the water, negative below. */
  readonly pixels: number;
  /** How much each end of the surface line weighs in it (they sum to 1), for error propagation. */
  readonly weightA: number;
  readonly weightB: number;
}

/**
 * Height of a picture point above the water surface line, carried on beyond its ends. Null without a surface line, or
 * when its ends lie on one upright line (it then has no above and below).
 */
export function heightAboveSurface(scene: Pick<Scene, 'surface'>, point: Point): HeightAboveSurface | null {
  if (!scene.surface) return null;
  const { a, b } = scene.surface;
  const flip = b.x < a.x ? -1 : 1;
  const dx = flip * (b.x - a.x);
  const dy = flip * (b.y - a.y);
  const length = Math.sqrt(dx * dx + dy * dy);
  if (!(dx > 0)) return null;
  // y runs down in the picture: a point above the line has the smaller y
  const pixels = ((point.x - a.x) * dy - (point.y - a.y) * dx) / length;
  const along = ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / (length * length);
  return { pixels, weightA: 1 - along, weightB: along };
}
