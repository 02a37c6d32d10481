import type { Point } from '../units/point';

/** A place of a moving point at a time, and how well it is known: variance of one axis. */
export interface TimedPlace {
  /** Seconds. */
  readonly time: number;
  readonly at: Point;
  readonly variance: number;
}

export interface BridgedPlace {
  readonly at: Point;
  readonly variance: number;
}

/** The share of a third difference's variance that white jerk gives, over one interval: 11/20. */
const thirdDifferenceShare = 0.55;
const usualInterval = 1 / 60;

/**
 * Where a point is at `time` when it was at `before` and will be at `after` (each ascending in time, neither reaching
 * over `time`), and its change of acceleration is white noise of standard deviation `jerkSd` over a sixtieth of a second
 * (unit of the places per s³): the best guess of a Kalman filter from either side, joined. `loose` is how far speed and
 * acceleration may be from nothing before anything is known (per s, per s²). Null when nothing is known at all.
 */
export function bridgeMotion(
  time: number,
  before: readonly TimedPlace[],
  after: readonly TimedPlace[],
  jerkSd: number,
  loose: { readonly speed: number; readonly acceleration: number },
): BridgedPlace | null {
  const noise = (jerkSd ** 2 * usualInterval) / thirdDifferenceShare;
  const one = reach(before, time, noise, loose);
  const other = reach([...after].reverse(), time, noise, loose);
  const own = one ?? other;
  if (!own) return null;
  if (!one || !other) return { at: { x: own.x[0], y: own.y[0] }, variance: own.p[0] };
  // the state from the other side as a measurement of this one's
  const [a, b, c, d, e, f] = other.p;
  const [g, h, i, j, k, l] = one.p;
  const sum: Covariance = [a + g, b + h, c + i, d + j, e + k, f + l];
  const gain = solve3(sum, [one.p[0], one.p[1], one.p[2]]);
  const shift = (axis: 'x' | 'y'): number =>
    gain[0] * (other[axis][0] - one[axis][0]) +
    gain[1] * (other[axis][1] - one[axis][1]) +
    gain[2] * (other[axis][2] - one[axis][2]);
  const variance = one.p[0] - gain[0] * one.p[0] - gain[1] * one.p[1] - gain[2] * one.p[2];
  return {
    at: { x: one.x[0] + shift('x'), y: one.y[0] + shift('y') },
    variance: Math.max(0, variance),
  };
}

type Three = readonly [number, number, number];
/** Of place, speed and acceleration, the upper half row by row. */
type Covariance = readonly [number, number, number, number, number, number];
interface State {
  readonly x: Three;
  readonly y: Three;
  readonly p: Covariance;
}

/** The state at `time` from places on one side of it, the farthest first. */
function reach(
  places: readonly TimedPlace[],
  time: number,
  noise: number,
  { speed, acceleration }: { readonly speed: number; readonly acceleration: number },
): State | null {
  const first = places[0];
  if (!first) return null;
  let state: State = {
    x: [first.at.x, 0, 0],
    y: [first.at.y, 0, 0],
    p: [first.variance, 0, 0, speed ** 2, 0, acceleration ** 2],
  };
  let now = first.time;
  for (const place of places.slice(1)) {
    state = sighted(moved(state, place.time - now, noise), place);
    now = place.time;
  }
  return moved(state, time - now, noise);
}

/** On by `dt` seconds, forward or back. */
function moved({ x, y, p }: State, dt: number, q: number): State {
  const h = (dt * dt) / 2;
  const [a, b, c, d, e, f] = p;
  // F P first, then times Fᵀ
  const r0 = [a + dt * b + h * c, b + dt * d + h * e, c + dt * e + h * f] as const;
  const r1 = [d + dt * e, e + dt * f] as const;
  const size = Math.abs(dt);
  const on = ([u, v, w]: Three): Three => [u + dt * v + h * w, v + dt * w, w];
  return {
    x: on(x),
    y: on(y),
    p: [
      r0[0] + dt * r0[1] + h * r0[2] + (q * size ** 5) / 20,
      r0[1] + dt * r0[2] + (q * dt * size ** 3) / 8,
      r0[2] + (q * size ** 3) / 6,
      r1[0] + dt * r1[1] + (q * size ** 3) / 3,
      r1[1] + (q * dt * size) / 2,
      f + q * size,
    ],
  };
}

function sighted({ x, y, p }: State, { at, variance }: TimedPlace): State {
  const total = p[0] + variance;
  const k: Three = [p[0] / total, p[1] / total, p[2] / total];
  const toward = (state: Three, seen: number): Three => {
    const off = seen - state[0];
    return [state[0] + k[0] * off, state[1] + k[1] * off, state[2] + k[2] * off];
  };
  return {
    x: toward(x, at.x),
    y: toward(y, at.y),
    p: [
      p[0] - k[0] * p[0],
      p[1] - k[0] * p[1],
      p[2] - k[0] * p[2],
      p[3] - k[1] * p[1],
      p[4] - k[1] * p[2],
      p[5] - k[2] * p[2],
    ],
  };
}

/** Solves a symmetric three by three (upper half row by row) by cofactors. */
function solve3([a, b, c, d, e, f]: Covariance, [u, v, w]: Three): Three {
  const aa = d * f - e * e;
  const bb = c * e - b * f;
  const cc = b * e - c * d;
  const determinant = a * aa + b * bb + c * cc;
  if (!(Math.abs(determinant) > 0)) return [0, 0, 0];
  const dd = a * f - c * c;
  const ee = b * c - a * e;
  const ff = a * d - b * b;
  return [
    (aa * u + bb * v + cc * w) / determinant,
    (bb * u + dd * v + ee * w) / determinant,
    (cc * u + ee * v + ff * w) / determinant,
  ];
}
