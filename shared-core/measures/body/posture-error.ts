import type { LandmarkName } from '../../marks/landmark';
import type { Point } from '../../units/brand';
import type { PostureMeasure, PosturePoints, PostureSituation } from './posture-measures';

export interface PostureError {
  /** From the marks, in the squared unit of what the measure reads. */
  readonly variance: number;
  /** Change of the value per radian by which the level is off. */
  readonly perTilt: number;
}

/**
 * First-order error of a measure on one posture: central differences in each landmark it needs. Steps are a tenth of
 * the marking error, so the slope is that of the curve where the marks are.
 */
export function postureError(
  measure: PostureMeasure,
  points: PosturePoints,
  situation: PostureSituation,
  sdOf: (landmark: LandmarkName) => number,
): PostureError {
  let variance = 0;
  for (const name of measure.needs) {
    const here = points[name];
    const sd = sdOf(name);
    if (!here || !(sd > 0)) continue;
    const step = sd / 10;
    for (const axis of ['x', 'y'] as const) {
      const shifted = (by: number): number | null =>
        measure.read({ ...points, [name]: { ...here, [axis]: here[axis] + by } }, situation);
      const up = shifted(step);
      const down = shifted(-step);
      if (up === null || down === null) continue;
      variance += (((up - down) / (2 * step)) * sd) ** 2;
    }
  }
  const turn = 1e-4;
  const turned = (angle: number): number | null =>
    measure.read(
      Object.fromEntries(
        measure.needs.flatMap((name) => {
          const p = points[name];
          return p ? [[name, rotate(p, angle)]] : [];
        }),
      ),
      situation,
    );
  const up = measure.turnsWithLevel ? turned(turn) : null;
  const down = measure.turnsWithLevel ? turned(-turn) : null;
  return { variance, perTilt: up === null || down === null ? 0 : (up - down) / (2 * turn) };
}

function rotate(p: Point, angle: number): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { x: p.x * c - p.y * s, y: p.x * s + p.y * c };
}
