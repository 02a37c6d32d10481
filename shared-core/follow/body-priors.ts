import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';

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
  /** How the limb is turned against the one before it; hands and feet only, which turn little about their joint. */
  readonly turn?: ExpectedTurn;
}

/** The limb, end minus joint, as the limb before it (joint minus `before`) turned and lengthened: `along` + i `across`. */
export interface ExpectedTurn {
  readonly before: LandmarkName;
  readonly along: number;
  readonly across: number;
  /** Pixels, one axis. */
  readonly sd: number;
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
      hessian[k * size + k] = (hessian[k * size + k] as number) + weight;
      gradient[k] = (gradient[k] as number) + weight * ((state[k] as number) - at);
    }
  });
}

/** Adds how long limbs should look, and how hands and feet are turned. */
export function addLengths(
  lengths: readonly ExpectedLength[],
  index: ReadonlyMap<LandmarkName, number>,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  for (const { from, to, length, sd, most, mostSd, turn } of lengths) {
    const a = index.get(from);
    const b = index.get(to);
    if (a === undefined || b === undefined) continue;
    const dx = (state[2 * b] as number) - (state[2 * a] as number);
    const dy = (state[2 * b + 1] as number) - (state[2 * a + 1] as number);
    if (turn) addTurn(turn, index.get(turn.before), a, b, state, hessian, gradient);
    const now = Math.hypot(dx, dy);
    if (now < 1e-6) continue;
    const places = [2 * a, 2 * a + 1, 2 * b, 2 * b + 1];
    const slopes = [-dx / now, -dy / now, dx / now, dy / now];
    addRow(places, slopes, now - length, 1 / sd ** 2, hessian, gradient);
    if (now > most) addRow(places, slopes, now - most, 1 / mostSd ** 2, hessian, gradient);
  }
}

/** Adds how far a hand or foot is turned from what is expected, axis by axis. */
function addTurn(
  { along, across, sd }: ExpectedTurn,
  before: number | undefined,
  joint: number,
  end: number,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  if (before === undefined) return;
  const at = (point: number, axis: number): number => state[2 * point + axis] as number;
  const [x, y] = [at(joint, 0) - at(before, 0), at(joint, 1) - at(before, 1)];
  const offX = at(end, 0) - at(joint, 0) - (along * x - across * y);
  const offY = at(end, 1) - at(joint, 1) - (across * x + along * y);
  const weight = 1 / sd ** 2;
  const places = [2 * end, 2 * end + 1, 2 * joint, 2 * joint + 1, 2 * before, 2 * before + 1];
  addRow(places, [1, 0, -1 - along, across, along, -across], offX, weight, hessian, gradient);
  addRow(places, [0, 1, -across, -1 - along, across, along], offY, weight, hessian, gradient);
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
    const p = places[i] as number;
    const s = weight * (slopes[i] as number);
    gradient[p] = (gradient[p] as number) + s * value;
    for (let j = 0; j < places.length; j++) {
      const q = p * size + (places[j] as number);
      hessian[q] = (hessian[q] as number) + s * (slopes[j] as number);
    }
  }
}
