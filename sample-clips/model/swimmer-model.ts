import type { LandmarkName } from '#core/marks/landmark';
import { kickWave } from './kick-wave';
import { periodicCurve } from './periodic-curve';
import { strokingArm } from './stroking-arm';
import { type ChainJoint, lengths, restHeight, type Segment, type Technique } from './technique';

/** Metres in the pool plane: x along travel, y up from the still surface. */
export interface PoolXY {
  readonly x: number;
  readonly y: number;
}
export type BodyPoints = Readonly<Record<LandmarkName, PoolXY>>;

/** The body at one instant: the nine landmarks, and what else is needed to draw it and to find its events. */
export interface Body extends BodyPoints {
  /** Way the crown points, radians from the way of travel, up positive. */
  readonly crown: number;
  readonly mouth: PoolXY;
  /** Distance of the near hand's middle from the body's middle plane, metres. */
  readonly handSide: number;
}

const turn = 2 * Math.PI;
const polar = (from: PoolXY, length: number, angle: number): PoolXY => ({
  x: from.x + length * Math.cos(angle),
  y: from.y + length * Math.sin(angle),
});
const halfShoulders = 0.035;
/** Share of the stroke by which the arm's own clock is behind the kick's, so that entry falls on the first kick's top. */
const handsLate = 0.058;

/** Rise and fall with the stroke, butterfly only: swing as a share of body length, share of the stroke when highest. */
const strokeRise: Readonly<Record<'shoulder' | 'hip' | 'knee', { swing: number; highest: number }>> = {
  shoulder: { swing: 0.046, highest: 0.6 },
  hip: { swing: 0.014, highest: 0.8 },
  knee: { swing: 0.004, highest: 0.94 },
};
/** The head's lift in a breathing stroke, 0 to 1. */
const breathLift = periodicCurve([
  [0.1, 0],
  [0.3, 0],
  [0.42, 0.25],
  [0.54, 0.95],
  [0.62, 1],
  [0.72, 0.7],
  [0.84, 0.08],
  [0.92, 0],
]);

/** True when the head comes up to breathe in this stroke, counted from 0. */
function breathesIn(technique: Technique, stroke: number): boolean {
  return technique.breathEvery > 0 && stroke % technique.breathEvery === 0;
}

/** Integral of the hip's speed wave: how far it is ahead of even progress, metres. */
function surge(technique: Technique, cycle: number): number {
  return technique.speedWave.reduce((sum, { swing, phase }, i) => {
    const rate = (turn * (i + 1)) / technique.period;
    return sum + ((technique.speed * swing) / rate) * Math.sin(turn * (i + 1) * cycle - phase);
  }, 0);
}

/**
 * The body at a real time. Heights of the chain follow one travelling wave in closed form; every segment keeps its
 * length, so the joints' places along the pool follow from their heights.
 */
export function swimmerModel(technique: Technique): (time: number) => Body {
  const { size } = technique;
  const wave = kickWave(technique);
  const stroke = technique.kind === 'butterfly';
  const belly = technique.onBack ? -1 : 1;
  const of = (segment: Segment): number => lengths[segment] * size;
  const height = (joint: ChainJoint, time: number, cycle: number): number => {
    const rise =
      stroke && (joint === 'shoulder' || joint === 'hip' || joint === 'knee') ? strokeRise[joint] : null;
    const rests = restHeight[joint] + (stroke && joint === 'shoulder' ? 0.026 : 0);
    return (
      technique.depth +
      belly * (size * rests + wave(joint, time)) +
      (rise ? size * rise.swing * Math.cos(turn * (cycle - rise.highest)) : 0)
    );
  };
  return (time) => {
    const cycle = (time - technique.startTime) / technique.period;
    const at = (joint: ChainJoint): number => height(joint, time, cycle);
    const next = (from: PoolXY, joint: ChainJoint, segment: Segment, way: 1 | -1): PoolXY => {
      const y = at(joint);
      return { x: from.x + way * Math.sqrt(of(segment) ** 2 - (y - from.y) ** 2), y };
    };
    const hip = {
      x:
        technique.startX +
        technique.speed * time +
        surge(technique, cycle) -
        surge(technique, -technique.startTime / technique.period),
      y: at('hip'),
    };
    const shoulder = next(hip, 'shoulder', 'trunk', 1);
    const knee = next(hip, 'knee', 'thigh', -1);
    const ankle = next(knee, 'ankle', 'shank', -1);
    const toe = next(ankle, 'toe', 'foot', -1);
    const trunk = Math.atan2(shoulder.y - hip.y, shoulder.x - hip.x);
    const share = cycle - Math.floor(cycle);
    const lift = breathesIn(technique, Math.floor(cycle)) ? breathLift(share - handsLate) : 0;
    const tuck = technique.arms === 'stretched' ? 0.22 : 0.14;
    const ear = polar(shoulder, of('neck'), trunk + belly * (-tuck + 0.95 * lift));
    const crown = trunk + belly * (-0.12 + 1.0 * lift);
    const face = crown - (belly * Math.PI) / 2;
    const mouth = polar(polar(ear, -0.02 * size, crown), 0.042 * size, face);
    if (technique.arms === 'stretched') {
      const elbow = next(shoulder, 'elbow', 'upperArm', 1);
      const wrist = next(elbow, 'wrist', 'forearm', 1);
      const fingertip = next(wrist, 'fingertip', 'hand', 1);
      return { fingertip, wrist, elbow, shoulder, ear, hip, knee, ankle, toe, crown, mouth, handSide: 0.01 };
    }
    if (technique.arms === 'folded') {
      // elbows before the chest, forearms across it: seen from the side both lie almost end-on
      const elbow = polar(shoulder, of('upperArm'), trunk + belly * -1.95);
      const wrist = polar(elbow, 0.2 * of('forearm'), trunk + belly * 0.5);
      const fingertip = polar(wrist, 0.25 * of('hand'), trunk + belly * 0.9);
      return { fingertip, wrist, elbow, shoulder, ear, hip, knee, ankle, toe, crown, mouth, handSide: 0 };
    }
    const arm = strokingArm(share - handsLate);
    const place = (p: { readonly x: number; readonly y: number }): PoolXY => ({
      x: shoulder.x + size * p.x,
      y: shoulder.y + size * p.y,
    });
    return {
      fingertip: place(arm.fingertip),
      wrist: place(arm.wrist),
      elbow: place(arm.elbow),
      shoulder,
      ear,
      hip,
      knee,
      ankle,
      toe,
      crown,
      mouth,
      handSide: size * (halfShoulders + (arm.wrist.z + arm.fingertip.z) / 2),
    };
  };
}
