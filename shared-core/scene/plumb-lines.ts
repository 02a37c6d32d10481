import { Matrix, solve } from 'ml-matrix';
import type { Point } from '../units/point';
import { type RadialDistortion, straightenPoint } from './radial-distortion';

export interface PlumbLineFit {
  readonly lens: RadialDistortion;
  /** Root mean square distance of the straightened points from their lines, pixels. */
  readonly residual: number;
}

/**
 * Radial distortion from points marked along lines that are straight in the pool: k1 and k2 are chosen so that the
 * straightened points lie as straight as they can (Levenberg's damped least squares). The distortion centre is taken
 * at `centre`, commonly the middle of the picture.
 *
 * @param lines each with three points or more; others are left out
 * @param terms 1 fits k1 alone (k2 is 0); 2 needs five points in all beyond two a line
 * @returns null with too few points, or when no fit is found (the lines all pass through the centre, say: a radial
 *   line stays straight under any lens)
 * @see Brown 1971, Photogrammetric Engineering 37:855–866 (plumb line method).
 */
export function distortionFromLines(
  lines: readonly (readonly Point[])[],
  centre: Point,
  reach: number,
  terms: 1 | 2 = 2,
): PlumbLineFit | null {
  const usable = lines.filter((line) => line.length >= 3);
  const spare = usable.reduce((sum, line) => sum + line.length - 2, 0);
  if (spare < terms + 1 || !(reach > 0)) return null;
  let k = [0, 0];
  let current = residuals(usable, lensOf(k, centre, reach));
  if (!current) return null;
  let cost = sumOfSquares(current);
  let damping = 1e-3;
  for (let round = 0; round < 60; round++) {
    const base = current;
    const columns: number[][] = [];
    for (let j = 0; j < terms; j++) {
      const step = 1e-6;
      const moved = residuals(
        usable,
        lensOf(
          k.map((v, i) => (i === j ? v + step : v)),
          centre,
          reach,
        ),
      );
      if (!moved) return null;
      columns.push(moved.map((v, i) => (v - (base[i] as number)) / step));
    }
    const jacobian = new Matrix(columns).transpose();
    const normal = jacobian.transpose().mmul(jacobian);
    const gradient = jacobian.transpose().mmul(Matrix.columnVector(base));
    for (let j = 0; j < terms; j++) {
      // pixels of bend per unit of k: none means these lines can't tell
      if (!(normal.get(j, j) > 1e-6)) return null;
      normal.set(j, j, normal.get(j, j) * (1 + damping));
    }
    const step = solve(normal, gradient).to1DArray();
    const next = k.map((v, j) => v - (step[j] as number));
    const tried = residuals(usable, lensOf(next, centre, reach));
    const triedCost = tried ? sumOfSquares(tried) : Infinity;
    if (tried && triedCost <= cost) {
      const settled = step.every((s) => Math.abs(s) < 1e-12);
      k = next;
      current = tried;
      cost = triedCost;
      damping = Math.max(1e-12, damping / 10);
      if (settled) break;
    } else {
      damping *= 10;
      if (damping > 1e12) break;
    }
  }
  const lens = lensOf(k, centre, reach);
  const points = usable.reduce((sum, line) => sum + line.length, 0);
  return { lens, residual: Math.sqrt(cost / points) };
}

const lensOf = (k: readonly number[], centre: Point, reach: number): RadialDistortion => ({
  k1: k[0] as number,
  k2: k[1] as number,
  centre,
  reach,
});

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, v) => sum + v * v, 0);

/** Signed distances of straightened points from the total-least-squares line of their group, pixels. */
function residuals(lines: readonly (readonly Point[])[], lens: RadialDistortion): number[] | null {
  const out: number[] = [];
  for (const line of lines) {
    const points: Point[] = [];
    for (const p of line) {
      const straight = straightenPoint(lens, p);
      if (!straight) return null;
      points.push(straight);
    }
    const mx = points.reduce((sum, p) => sum + p.x, 0) / points.length;
    const my = points.reduce((sum, p) => sum + p.y, 0) / points.length;
    let xx = 0;
    let yy = 0;
    let xy = 0;
    for (const p of points) {
      xx += (p.x - mx) ** 2;
      yy += (p.y - my) ** 2;
      xy += (p.x - mx) * (p.y - my);
    }
    const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
    // an upright line's angle may jump by a half turn between trials: hold on to the order the points were marked in
    const first = points[0] ?? { x: mx, y: my };
    const last = points.at(-1) ?? first;
    const ahead = (last.x - first.x) * Math.cos(angle) + (last.y - first.y) * Math.sin(angle) < 0 ? -1 : 1;
    for (const p of points) {
      out.push(ahead * (-(p.x - mx) * Math.sin(angle) + (p.y - my) * Math.cos(angle)));
    }
  }
  return out;
}
