import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/brand';

/** Where a landmark is thought to be before the picture is looked at; pixels, standard deviation of one axis. */
export interface Expected {
  readonly at: Point;
  readonly sd: number;
}

/** How long a limb should look, pixels. */
export interface ExpectedLength {
  readonly from: LandmarkName;
  readonly to: LandmarkName;
  readonly length: number;
  readonly sd: number;
  /** A rigid limb never looks longer than where it lies in the picture's plane, give or take. */
  readonly most: number;
  readonly mostSd: number;
}

/** Adds where landmarks are expected to the normal equations (x and y of each landmark in turn). */
export function addExpected(
  names: readonly LandmarkName[],
  expected: ReadonlyMap<LandmarkName, Expected>,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  const size = 2 * names.length;
  names.forEach((name, i) => {
    const prior = expected.get(name);
    if (!prior) return;
    const weight = 1 / prior.sd ** 2;
    for (const [axis, at] of [prior.at.x, prior.at.y].entries()) {
      const k = 2 * i + axis;
      hessian[k * size + k] = (hessian[k * size + k] ?? 0) + weight;
      gradient[k] = (gradient[k] ?? 0) + weight * ((state[k] ?? 0) - at);
    }
  });
}

/** Adds how long limbs should look. */
export function addLengths(
  lengths: readonly ExpectedLength[],
  index: ReadonlyMap<LandmarkName, number>,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  for (const { from, to, length, sd, most, mostSd } of lengths) {
    const a = index.get(from);
    const b = index.get(to);
    if (a === undefined || b === undefined) continue;
    const dx = (state[2 * b] ?? 0) - (state[2 * a] ?? 0);
    const dy = (state[2 * b + 1] ?? 0) - (state[2 * a + 1] ?? 0);
    const now = Math.hypot(dx, dy);
    if (now < 1e-6) continue;
    const places = [2 * a, 2 * a + 1, 2 * b, 2 * b + 1];
    const slopes = [-dx / now, -dy / now, dx / now, dy / now];
    addRow(places, slopes, now - length, 1 / sd ** 2, hessian, gradient);
    if (now > most) addRow(places, slopes, now - most, 1 / mostSd ** 2, hessian, gradient);
  }
}

/** Adds one weighed residual with its slopes. */
function addRow(
  places: readonly number[],
  slopes: readonly number[],
  value: number,
  weight: number,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  const size = gradient.length;
  for (let i = 0; i < places.length; i++) {
    const p = places[i] ?? 0;
    const s = weight * (slopes[i] ?? 0);
    gradient[p] = (gradient[p] ?? 0) + s * value;
    for (let j = 0; j < places.length; j++) {
      const q = p * size + (places[j] ?? 0);
      hessian[q] = (hessian[q] ?? 0) + s * (slopes[j] ?? 0);
    }
  }
}
