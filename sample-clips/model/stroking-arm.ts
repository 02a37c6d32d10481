import { periodicCurve } from './periodic-curve';
import { lengths } from './technique';

/** x along travel, y up, z toward the camera; metres for a body of 1 m, from the shoulder. */
interface Space {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}
export interface ArmPose {
  readonly elbow: Space;
  readonly wrist: Space;
  readonly fingertip: Space;
}

const knots = (index: 1 | 2 | 3): (readonly [number, number])[] => path.map((row) => [row[0], row[index]]);
/** Wrist from the shoulder over one stroke, beginning at the entry: share, forward, up, sideways. Our own drawing. */
const path = [
  [0.0, 0.221, 0.048, 0.036],
  [0.07, 0.23, 0.03, 0.034],
  [0.15, 0.228, 0.002, 0.05],
  [0.23, 0.21, -0.045, 0.082],
  [0.31, 0.15, -0.115, 0.098],
  [0.39, 0.065, -0.172, 0.078],
  [0.46, -0.03, -0.186, 0.03],
  [0.53, -0.13, -0.152, 0.002],
  [0.59, -0.2, -0.088, 0.03],
  [0.64, -0.222, -0.012, 0.06],
  [0.7, -0.19, 0.07, 0.112],
  [0.77, -0.1, 0.115, 0.172],
  [0.84, 0.02, 0.122, 0.194],
  [0.91, 0.135, 0.106, 0.152],
  [0.96, 0.197, 0.078, 0.078],
] as const;
const forward = periodicCurve(knots(1));
const up = periodicCurve(knots(2));
const side = periodicCurve(knots(3));

/** How far the elbow points up (over the water) rather than outward (under it), 0 to 1. */
const elbowUp = periodicCurve([
  [0.1, 0.15],
  [0.3, 0],
  [0.5, 0.05],
  [0.62, 0.35],
  [0.74, 1],
  [0.86, 1],
  [0.96, 0.5],
]);
/** Bend of the hand against the forearm, radians; positive lifts the fingertips. */
const handBend = periodicCurve([
  [0, -0.12],
  [0.12, 0],
  [0.25, -0.3],
  [0.4, -0.12],
  [0.55, 0.12],
  [0.66, 0.2],
  [0.8, -0.1],
]);

const unit = (a: Space): Space => {
  const long = Math.hypot(a.x, a.y, a.z);
  return { x: a.x / long, y: a.y / long, z: a.z / long };
};

/** The near arm at a share of the stroke: two rigid bones reach for the wrist, the hand goes on from the forearm. */
export function strokingArm(share: number): ArmPose {
  const { upperArm, forearm, hand } = lengths;
  const raw = { x: forward(share), y: up(share), z: side(share) };
  const reach = Math.min(Math.hypot(raw.x, raw.y, raw.z), 0.995 * (upperArm + forearm));
  const way = unit(raw);
  const lift = elbowUp(share);
  const pole = unit({ x: 0.35 * (1 - lift), y: 0.25 + 0.75 * lift, z: 1 - 0.9 * lift });
  const along = pole.x * way.x + pole.y * way.y + pole.z * way.z;
  const out = unit({
    x: pole.x - along * way.x,
    y: pole.y - along * way.y,
    z: pole.z - along * way.z,
  });
  const near = (upperArm ** 2 - forearm ** 2 + reach ** 2) / (2 * reach);
  const off = Math.sqrt(Math.max(0, upperArm ** 2 - near ** 2));
  const elbow = {
    x: way.x * near + out.x * off,
    y: way.y * near + out.y * off,
    z: way.z * near + out.z * off,
  };
  const wrist = { x: way.x * reach, y: way.y * reach, z: way.z * reach };
  const on = unit({ x: wrist.x - elbow.x, y: wrist.y - elbow.y, z: wrist.z - elbow.z });
  const bend = handBend(share);
  const turned = {
    x: on.x * Math.cos(bend) - on.y * Math.sin(bend),
    y: on.x * Math.sin(bend) + on.y * Math.cos(bend),
    z: on.z,
  };
  return {
    elbow,
    wrist,
    fingertip: { x: wrist.x + hand * turned.x, y: wrist.y + hand * turned.y, z: wrist.z + hand * turned.z },
  };
}
