import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { Point } from '../units/point';

/** Row-major 3×3 matrix that carries picture points to the plane, scaled so that its last element is 1. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/**
 * Plane-to-plane map from four or more point pairs: normalised direct linear transform, least squares in the
 * algebraic error when there are more than four.
 *
 * @returns null with fewer than four pairs, or when three of four points lie on a line (or all points do): the plane
 *   is then not fixed
 * @see Hartley & Zisserman, Multiple View Geometry, algorithm 4.2.
 */
export function homographyFromPoints(from: readonly Point[], to: readonly Point[]): Homography | null {
  const n = Math.min(from.length, to.length);
  if (n < 4) return null;
  const a = normaliser(from);
  const b = normaliser(to);
  if (!a || !b) return null;
  const rows: number[][] = [];
  for (let i = 0; i < n; i++) {
    const p = from[i];
    const q = to[i];
    if (!p || !q) return null;
    const x = (p.x - a.x) * a.scale;
    const y = (p.y - a.y) * a.scale;
    const u = (q.x - b.x) * b.scale;
    const v = (q.y - b.y) * b.scale;
    rows.push([-x, -y, -1, 0, 0, 0, u * x, u * y, u], [0, 0, 0, -x, -y, -1, v * x, v * y, v]);
  }
  // a ninth row of zeros lets four pairs give a full set of right vectors
  while (rows.length < 9) rows.push(new Array<number>(9).fill(0));
  const svd = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: true });
  const sizes = svd.diagonal;
  // the second smallest singular value at zero: more than one map fits
  if (!((sizes[7] as number) > 1e-9 * (sizes[0] as number))) return null;
  const h = svd.rightSingularVectors.getColumn(8);
  const core = new Matrix([h.slice(0, 3), h.slice(3, 6), h.slice(6, 9)]);
  const before = new Matrix([
    [a.scale, 0, -a.scale * a.x],
    [0, a.scale, -a.scale * a.y],
    [0, 0, 1],
  ]);
  const after = new Matrix([
    [1 / b.scale, 0, b.x],
    [0, 1 / b.scale, b.y],
    [0, 0, 1],
  ]);
  const full = after.mmul(core).mmul(before);
  const last = full.get(2, 2);
  // a core that flattens the plane (three points of one side on a line) is no map between planes
  const spread = singularSpread(core);
  if (!(spread > 1e-9) || Math.abs(last) < 1e-12) return null;
  const out = full.div(last).to1DArray();
  return out.every(Number.isFinite) ? (out as unknown as Homography) : null;
}

function singularSpread(core: Matrix): number {
  const sizes = new SingularValueDecomposition(core).diagonal;
  return (sizes[2] as number) / (sizes[0] ?? 1);
}

/** Middle of the points and the scale that brings their mean distance from it to √2; null when they coincide. */
function normaliser(points: readonly Point[]): { x: number; y: number; scale: number } | null {
  const n = points.length;
  const x = points.reduce((sum, p) => sum + p.x, 0) / n;
  const y = points.reduce((sum, p) => sum + p.y, 0) / n;
  const reach = points.reduce((sum, p) => sum + Math.hypot(p.x - x, p.y - y), 0) / n;
  return reach > 0 ? { x, y, scale: Math.SQRT2 / reach } : null;
}

/** Where a homography carries a point; null on the map's horizon line. */
export function applyHomography(h: Homography, point: Point): Point | null {
  const w = h[6] * point.x + h[7] * point.y + h[8];
  if (Math.abs(w) < 1e-12) return null;
  return {
    x: (h[0] * point.x + h[1] * point.y + h[2]) / w,
    y: (h[3] * point.x + h[4] * point.y + h[5]) / w,
  };
}
