import type { SKRSContext2D } from '@napi-rs/canvas';
import type { BodyPoints, PoolXY } from '../model/swimmer-model';
import { drawRound, type Girth, slices, type Tone } from './ribbon';

export interface Looks {
  readonly skin: Tone;
  readonly suit: Tone;
  readonly cap: Tone;
  /** Where the suit ends, counted along neck, shoulder, hip, knee, ankle, toe. */
  readonly suitFrom: number;
  readonly suitTo: number;
  /** Slender (0.85) to sturdy (1.1). */
  readonly build: number;
  readonly fins: boolean;
  readonly snorkel: boolean;
}
export type Project = (point: PoolXY) => PoolXY;

/** Girths in metres for a body of 2.3 m fingertip to toe; first side is the back. Our own drawing. */
const trunkAndLeg: readonly Girth[] = [
  { at: 0, first: 0.05, second: 0.05 },
  { at: 0.55, first: 0.058, second: 0.062 },
  { at: 1, first: 0.09, second: 0.095 },
  { at: 1.3, first: 0.1, second: 0.118 },
  { at: 1.6, first: 0.082, second: 0.09 },
  { at: 2.08, first: 0.112, second: 0.088 },
  { at: 2.3, first: 0.098, second: 0.094 },
  { at: 2.6, first: 0.068, second: 0.082 },
  { at: 2.92, first: 0.05, second: 0.062 },
  { at: 3.06, first: 0.05, second: 0.058 },
  { at: 3.35, first: 0.068, second: 0.044 },
  { at: 3.62, first: 0.052, second: 0.037 },
  { at: 3.88, first: 0.034, second: 0.031 },
  { at: 4, first: 0.046, second: 0.034 },
  { at: 4.14, first: 0.046, second: 0.034 },
  { at: 4.4, first: 0.03, second: 0.03 },
  { at: 4.78, first: 0.022, second: 0.02 },
  { at: 5, first: 0.007, second: 0.007 },
];
const arm: readonly Girth[] = [
  { at: 0, first: 0.058, second: 0.058 },
  { at: 0.25, first: 0.056, second: 0.052 },
  { at: 0.7, first: 0.043, second: 0.043 },
  { at: 1, first: 0.038, second: 0.04 },
  { at: 1.3, first: 0.042, second: 0.04 },
  { at: 1.85, first: 0.026, second: 0.026 },
  { at: 2, first: 0.024, second: 0.024 },
  { at: 2.35, first: 0.03, second: 0.026 },
  { at: 2.75, first: 0.02, second: 0.018 },
  { at: 3, first: 0.006, second: 0.006 },
];
const fin: readonly Girth[] = [
  { at: 0, first: 0.05, second: 0.044 },
  { at: 0.5, first: 0.05, second: 0.042 },
  { at: 1, first: 0.03, second: 0.028 },
  { at: 1.2, first: 0.016, second: 0.014 },
  { at: 2, first: 0.004, second: 0.004 },
];
const rubber: Tone = { light: [66, 76, 84], dark: [12, 18, 24] };

const sized = (girths: readonly Girth[], scale: number): readonly Girth[] =>
  girths.map((each) => ({ at: each.at, first: each.first * scale, second: each.second * scale }));

/** Trunk and one leg as one smooth body, then suit and fin. `belly` is −1 on the back. */
export function drawTrunkAndLeg(
  context: SKRSContext2D,
  p: BodyPoints,
  finTip: PoolXY,
  looks: Looks,
  scale: number,
  belly: 1 | -1,
  project: Project,
  legOnly: boolean,
): void {
  const neck = {
    x: p.shoulder.x + 0.62 * (p.ear.x - p.shoulder.x),
    y: p.shoulder.y + 0.62 * (p.ear.y - p.shoulder.y),
  };
  const joints = [neck, p.shoulder, p.hip, p.knee, p.ankle, p.toe];
  const girths = sized(trunkAndLeg, scale * looks.build);
  // walking from the neck to the toes along −x, the back (up, prone) lies to the right
  const ribbon = slices(joints, girths, belly < 0);
  drawRound(context, ribbon, project, looks.skin, legOnly ? { from: 1.95, to: 5 } : undefined);
  if (!legOnly || looks.suitTo > 2)
    drawRound(context, slices(joints, sized(girths, 1.015), belly < 0), project, looks.suit, {
      from: legOnly ? 1.95 : looks.suitFrom,
      to: looks.suitTo,
    });
  if (!looks.fins) return;
  const foot = { x: p.ankle.x + 0.25 * (p.toe.x - p.ankle.x), y: p.ankle.y + 0.25 * (p.toe.y - p.ankle.y) };
  drawRound(context, slices([foot, p.toe, finTip], sized(fin, scale), belly < 0), project, rubber);
}

export function drawArm(
  context: SKRSContext2D,
  p: BodyPoints,
  looks: Looks,
  scale: number,
  project: Project,
): void {
  const ribbon = slices([p.shoulder, p.elbow, p.wrist, p.fingertip], sized(arm, scale * looks.build), true);
  const root = project(p.shoulder);
  const lower = project({ x: p.shoulder.x, y: p.shoulder.y - 0.058 * scale * looks.build });
  const radius = Math.abs(lower.y - root.y);
  const ball = context.createLinearGradient(0, root.y - radius, 0, root.y + radius);
  ball.addColorStop(0.15, `rgb(${looks.skin.light.join(',')})`);
  ball.addColorStop(
    1,
    `rgb(${looks.skin.light.map((c, k) => Math.round(c * 0.45 + (looks.skin.dark[k] ?? 0) * 0.55)).join(',')})`,
  );
  context.fillStyle = ball;
  context.beginPath();
  context.arc(root.x, root.y, radius, 0, 2 * Math.PI);
  context.fill();
  drawRound(context, ribbon, project, looks.skin);
}
