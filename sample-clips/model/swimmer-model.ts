import type { LandmarkName } from '#core/marks/landmark';
import { anchoredCurve } from './anchored-curve';

/** Metres in the pool plane: x along travel, y up from the still surface. */
export interface PoolXY {
  readonly x: number;
  readonly y: number;
}
export type BodyPoints = Readonly<Record<LandmarkName, PoolXY>>;

/** How one invented swimmer moves. Lengths in metres, angles in radians, times in real seconds. */
export interface Technique {
  readonly kind: 'butterfly' | 'kick';
  readonly arms: 'stroking' | 'stretched' | 'folded';
  /** Seconds of one stroke (butterfly, two kicks) or one kick. */
  readonly period: number;
  /** Shares of the stroke at which kick one and two reach top and bottom; for kicks alone only the bottom counts. */
  readonly kicks: readonly { readonly top: number; readonly bottom: number }[];
  readonly speed: number;
  /** Within-cycle swing of the forward place, metres. */
  readonly surge: number;
  readonly depth: number;
  readonly size: number;
  readonly kneeBend: number;
  readonly startX: number;
  /** Real time of the first stroke's or kick's beginning. */
  readonly startTime: number;
}

/** Segment lengths as shares of a streamlined body, fingertip to toe; our own round proportions. */
export const lengths = {
  hand: 0.078,
  forearm: 0.11,
  upperArm: 0.125,
  trunk: 0.225,
  thigh: 0.185,
  shank: 0.18,
  foot: 0.097,
  earUp: 0.075,
} as const;

const turn = 2 * Math.PI;
const polar = (from: PoolXY, length: number, angle: number): PoolXY => ({
  x: from.x + length * Math.cos(angle),
  y: from.y + length * Math.sin(angle),
});
const degrees = (value: number): number => (value * Math.PI) / 180;

/** Phase of the legs, in kicks: whole at each top, half at each bottom; follows the technique's own instants. */
function legPhase(technique: Technique): (cycle: number) => number {
  const kicks = technique.kicks;
  const marks: [number, number][] = [];
  for (let around = -1; around <= 1; around++)
    kicks.forEach((kick, i) => {
      const phase = around * kicks.length + i;
      marks.push([around + kick.top, phase], [around + kick.bottom, phase + 0.5]);
    });
  marks.push([2 + (kicks[0]?.top ?? 0), 2 * kicks.length]);
  const curve = anchoredCurve(marks);
  return (cycle) => {
    const whole = Math.floor(cycle);
    return curve(cycle - whole) + whole * kicks.length;
  };
}

/** Angle of the upper arm (0 forward, −90° down, −180° back, on to −360° over the water) and bend of the elbow. */
const armAngle = anchoredCurve([
  [0, 8],
  [0.12, 2],
  [0.22, -14],
  [0.34, -52],
  [0.44, -92],
  [0.54, -138],
  [0.64, -184],
  [0.72, -222],
  [0.82, -282],
  [0.92, -330],
  [1, -352],
]);
const elbowBend = anchoredCurve([
  [0, 2],
  [0.2, 14],
  [0.36, 58],
  [0.46, 66],
  [0.56, 40],
  [0.64, 8],
  [0.82, 12],
  [1, 2],
]);

/** The nine landmarks at a real time. */
export function swimmerModel(technique: Technique): (time: number) => BodyPoints {
  const phaseOf = legPhase(technique);
  const { size } = technique;
  const of = (name: keyof typeof lengths): number => lengths[name] * size;
  const stroke = technique.kind === 'butterfly';
  return (time) => {
    const cycle = (time - technique.startTime) / technique.period;
    const share = cycle - Math.floor(cycle);
    const kick = phaseOf(cycle) * turn;
    // the wave runs from hands to feet: each joint answers a little later than the one before it
    const trunkTilt = stroke
      ? degrees(9 + 13 * Math.cos(turn * (share - 0.56)) + 2.5 * Math.cos(kick - 0.4))
      : degrees(3.5 * Math.cos(kick + 2.4));
    const hip: PoolXY = {
      x:
        technique.startX +
        technique.speed * time +
        technique.surge * Math.sin(turn * (stroke ? cycle * 2 : cycle) - 0.8),
      y:
        technique.depth +
        size *
          (stroke
            ? 0.012 * Math.cos(turn * (share - 0.1)) - 0.012 * Math.cos(kick)
            : -0.018 * Math.cos(kick + 0.5)),
    };
    const shoulder = polar(hip, of('trunk'), trunkTilt);
    const thighDrop = degrees(9 - 13 * Math.cos(kick + 0.75));
    const bend = degrees(technique.kneeBend) * (0.5 + 0.5 * Math.cos(kick + 0.12)) ** 1.3 + degrees(4);
    const knee = polar(hip, of('thigh'), Math.PI + thighDrop);
    const shankAngle = Math.PI + thighDrop - bend;
    const ankle = polar(knee, of('shank'), shankAngle);
    const toe = polar(ankle, of('foot'), shankAngle - degrees(6 + 16 * Math.cos(kick + 0.05)));
    const head = headOf(technique, shoulder, trunkTilt, of('earUp'), cycle);
    return {
      ...armOf(technique, shoulder, trunkTilt, share, kick, of),
      shoulder,
      ear: head,
      hip,
      knee,
      ankle,
      toe,
    };
  };
}

/** Breathing strokes: every second one, the head comes up while the hands press back. */
export function breathesIn(stroke: number): boolean {
  return stroke % 2 === 0;
}

function headOf(technique: Technique, shoulder: PoolXY, tilt: number, length: number, cycle: number): PoolXY {
  if (technique.kind !== 'butterfly') return polar(shoulder, length, tilt - degrees(14));
  const share = cycle - Math.floor(cycle);
  const lift = breathesIn(Math.floor(cycle)) ? Math.exp(-(((share - 0.56) / 0.13) ** 2)) : 0;
  return polar(shoulder, length, tilt + degrees(-18 + 64 * lift));
}

function armOf(
  technique: Technique,
  shoulder: PoolXY,
  tilt: number,
  share: number,
  kick: number,
  of: (name: keyof typeof lengths) => number,
): Pick<BodyPoints, 'elbow' | 'wrist' | 'fingertip'> {
  if (technique.arms === 'folded') {
    const elbow = polar(shoulder, of('upperArm'), tilt - degrees(8));
    const wrist = polar(elbow, of('forearm') * 0.35, tilt + degrees(150));
    return { elbow, wrist, fingertip: polar(wrist, of('hand') * 0.8, tilt + degrees(165)) };
  }
  if (technique.arms === 'stretched') {
    const wave = degrees(2.2 * Math.cos(kick + 3));
    const elbow = polar(shoulder, of('upperArm'), tilt * 0.5 + wave + degrees(2));
    const wrist = polar(elbow, of('forearm'), tilt * 0.3 + wave);
    return { elbow, wrist, fingertip: polar(wrist, of('hand'), tilt * 0.2 + wave) };
  }
  const angle = degrees(armAngle(share));
  const bend = degrees(elbowBend(share));
  // over the water the arms swing sideways, toward and from the camera: seen from the side they look shorter
  const seen = share > 0.66 ? 1 - 0.42 * Math.sin((Math.PI * (share - 0.66)) / 0.34) ** 2 : 1;
  const elbow = polar(shoulder, of('upperArm') * seen, angle);
  const wrist = polar(elbow, of('forearm') * seen, angle - bend);
  return { elbow, wrist, fingertip: polar(wrist, of('hand') * seen, angle - bend * 0.8) };
}
