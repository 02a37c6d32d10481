import type { Point } from '../units/point';

/**
 * Radial lens distortion after Brown and Conrady, on points measured from the distortion centre in units of `reach`:
 * distorted = straight · (1 + k1·r² + k2·r⁴), r the straight point's distance. k1 below 0 is a barrel.
 */
export interface RadialDistortion {
  readonly k1: number;
  readonly k2: number;
  readonly centre: Point;
  /** Pixels that count as 1: the focal length in pixels, or half of the picture's diagonal. */
  readonly reach: number;
}

/** Where the lens puts a straight point. */
export function distortPoint(lens: RadialDistortion, point: Point): Point {
  const x = (point.x - lens.centre.x) / lens.reach;
  const y = (point.y - lens.centre.y) / lens.reach;
  const r2 = x * x + y * y;
  const stretch = 1 + lens.k1 * r2 + lens.k2 * r2 * r2;
  return { x: lens.centre.x + x * stretch * lens.reach, y: lens.centre.y + y * stretch * lens.reach };
}

/**
 * The straight point that the lens put here, by Newton's method on the radius. Null where the lens folds over (no
 * single straight point): far out with a strong barrel.
 */
export function straightenPoint(lens: RadialDistortion, point: Point): Point | null {
  const dx = point.x - lens.centre.x;
  const dy = point.y - lens.centre.y;
  const target = Math.hypot(dx, dy) / lens.reach;
  if (target === 0) return { x: point.x, y: point.y };
  let r = target;
  for (let i = 0; i < 60; i++) {
    const r2 = r * r;
    const slope = 1 + 3 * lens.k1 * r2 + 5 * lens.k2 * r2 * r2;
    if (!(slope > 1e-6)) return null;
    const move = (r * (1 + lens.k1 * r2 + lens.k2 * r2 * r2) - target) / slope;
    r -= move;
    if (!(r >= 0) || !Number.isFinite(r)) return null;
    if (Math.abs(move) < 1e-14 * target) break;
  }
  const back = r * (1 + lens.k1 * r * r + lens.k2 * r ** 4);
  if (Math.abs(back - target) > 1e-9 * target) return null;
  return { x: lens.centre.x + (dx * r) / target, y: lens.centre.y + (dy * r) / target };
}
