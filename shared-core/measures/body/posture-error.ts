import { type LandmarkName, landmarkNames } from '../../marks/landmark';
import type { Point } from '../../units/brand';
import type { PostureMeasure, PosturePoints, PostureSituation } from './posture-measure';

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
  const moved: PosturePoints = { ...points };
  for (const name of measure.needs) {
    const here = points[name];
    const sd = sdOf(name);
    if (!here || !(sd > 0)) continue;
    const step = sd / 10;
    for (const axis of ['x', 'y'] as const) {
      const shifted = (by: number): number | null => {
        moved[name] = axis === 'x' ? { x: here.x + by, y: here.y } : { x: here.x, y: here.y + by };
        return measure.read(moved, situation);
      };
      const up = shifted(step);
      const down = shifted(-step);
      if (up === null || down === null) continue;
      variance += (((up - down) / (2 * step)) * sd) ** 2;
    }
    moved[name] = here;
  }
  if (!measure.turnsWithLevel) return { variance, perTilt: 0 };
  const turn = 1e-4;
  const turned = (angle: number): number | null => {
    for (const name of landmarkNames) {
      const here = points[name];
      if (here) moved[name] = rotate(here, angle);
    }
    return measure.read(moved, situation);
  };
  const up = turned(turn);
  const down = turned(-turn);
  return { variance, perTilt: up === null || down === null ? 0 : (up - down) / (2 * turn) };
}

function rotate(p: Point, angle: number): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { x: p.x * c - p.y * s, y: p.x * s + p.y * c };
}
