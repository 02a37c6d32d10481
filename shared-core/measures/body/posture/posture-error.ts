import { type LandmarkName, landmarkNames } from '../../../marks/landmark';
import type { Point } from '../../../units/point';
import { turnedTo } from '../points/angles';
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
  // two readings of one angle may lie on either side of where a turn begins
  const apart = (a: number, b: number): number => (measure.kind === 'angle' ? turnedTo(0, a - b) : a - b);
  let variance = 0;
  const moved: PosturePoints = { ...points };
  for (const name of measure.needs) {
    const here = points[name];
    const sd = sdOf(name);
    if (!here || !(sd > 0)) continue;
    const step = sd / 10;
    const there = { x: here.x + step, y: here.y };
    moved[name] = there;
    const right = measure.read(moved, situation);
    there.x = here.x - step;
    const left = measure.read(moved, situation);
    there.x = here.x;
    there.y = here.y + step;
    const up = measure.read(moved, situation);
    there.y = here.y - step;
    const down = measure.read(moved, situation);
    moved[name] = here;
    const share = (sd / (2 * step)) ** 2;
    if (right !== null && left !== null) variance += share * apart(right, left) ** 2;
    if (up !== null && down !== null) variance += share * apart(up, down) ** 2;
  }
  if (!measure.turnsWithLevel) return { variance, perTilt: 0 };
  const turn = 1e-4;
  const up = measure.read(turned(points, turn), situation);
  const down = measure.read(turned(points, -turn), situation);
  return { variance, perTilt: up === null || down === null ? 0 : apart(up, down) / (2 * turn) };
}

function turned(points: PosturePoints, angle: number): PosturePoints {
  const out: PosturePoints = {};
  for (const name of landmarkNames) {
    const here = points[name];
    if (here) out[name] = rotate(here, angle);
  }
  return out;
}

function rotate(p: Point, angle: number): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { x: p.x * c - p.y * s, y: p.x * s + p.y * c };
}
