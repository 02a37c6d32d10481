import type { SKRSContext2D } from '@napi-rs/canvas';
import { seeded } from '../model/seeded';
import type { BodyPoints, PoolXY } from '../model/swimmer-model';
import { type Camera, toPicture } from './camera';

export interface Looks {
  readonly skin: string;
  readonly shade: string;
  readonly suit: string;
  readonly cap: string;
  readonly fins: boolean;
}

/** A limb with volume: two circles and the hull between them, light from above. */
function limb(
  context: SKRSContext2D,
  a: PoolXY,
  b: PoolXY,
  ra: number,
  rb: number,
  light: string,
  dark: string,
): void {
  const angle = Math.atan2(b.y - a.y, b.x - a.x);
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  const top = Math.min(a.y - ra, b.y - rb);
  const bottom = Math.max(a.y + ra, b.y + rb);
  const fill = context.createLinearGradient(0, top, 0, bottom);
  fill.addColorStop(0, light);
  fill.addColorStop(1, dark);
  context.fillStyle = fill;
  context.beginPath();
  context.arc(a.x, a.y, ra, angle + Math.PI / 2, angle - Math.PI / 2);
  context.lineTo(b.x - nx * rb, b.y - ny * rb);
  context.arc(b.x, b.y, rb, angle - Math.PI / 2, angle + Math.PI / 2);
  context.lineTo(a.x + nx * ra, a.y + ny * ra);
  context.closePath();
  context.fill();
}

const between = (a: PoolXY, b: PoolXY, share: number): PoolXY => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});
const moved = (points: BodyPoints, dx: number, dy: number): BodyPoints =>
  Object.fromEntries(
    Object.entries(points).map(([name, p]) => [name, { x: p.x + dx, y: p.y + dy }]),
  ) as unknown as BodyPoints;

/** Draws one swimmer from side on: far arm and leg first, then trunk and head, then near arm and leg. */
export function drawSwimmer(
  context: SKRSContext2D,
  camera: Camera,
  body: BodyPoints,
  size: number,
  looks: Looks,
): void {
  const points = Object.fromEntries(
    Object.entries(body).map(([name, point]) => [name, toPicture(camera, point)]),
  ) as unknown as BodyPoints;
  const r = (share: number): number => (share * size) / camera.metresPerPixel;
  const limbs = (p: BodyPoints, light: string, dark: string): void => {
    limb(context, p.hip, p.knee, r(0.031), r(0.022), light, dark);
    limb(context, p.knee, p.ankle, r(0.022), r(0.0125), light, dark);
    limb(context, p.ankle, p.toe, r(0.0125), r(0.006), light, dark);
    if (looks.fins) {
      const tip = between(p.ankle, p.toe, 2.6);
      limb(context, between(p.ankle, p.toe, 0.35), tip, r(0.013), r(0.004), '#20272c', '#0c1013');
    }
    limb(context, p.shoulder, p.elbow, r(0.021), r(0.016), light, dark);
    limb(context, p.elbow, p.wrist, r(0.016), r(0.0105), light, dark);
    limb(context, p.wrist, p.fingertip, r(0.0115), r(0.006), light, dark);
  };
  limbs(moved(points, camera.travel === 'right' ? 7 : -7, -5), '#8c6a55', '#5d4537');
  trunk(context, points, r, looks);
  head(context, points, r, looks, camera.travel === 'right' ? 1 : -1);
  limbs(points, looks.skin, looks.shade);
  // the suit's hip over the thigh's root
  limb(
    context,
    between(points.hip, points.shoulder, 0.04),
    between(points.hip, points.knee, 0.12),
    r(0.037),
    r(0.033),
    looks.suit,
    '#0b1522',
  );
}

function trunk(context: SKRSContext2D, p: BodyPoints, r: (share: number) => number, looks: Looks): void {
  const chest = between(p.hip, p.shoulder, 0.72);
  const waist = between(p.hip, p.shoulder, 0.32);
  limb(context, p.hip, waist, r(0.038), r(0.035), looks.skin, looks.shade);
  limb(context, waist, chest, r(0.035), r(0.045), looks.skin, looks.shade);
  limb(context, chest, p.shoulder, r(0.045), r(0.031), looks.skin, looks.shade);
  limb(context, p.hip, between(p.hip, p.shoulder, 0.62), r(0.0385), r(0.0405), looks.suit, '#0b1522');
}

function head(
  context: SKRSContext2D,
  p: BodyPoints,
  r: (share: number) => number,
  looks: Looks,
  way: 1 | -1,
): void {
  limb(context, p.shoulder, between(p.shoulder, p.ear, 0.75), r(0.02), r(0.022), looks.skin, looks.shade);
  const angle = Math.atan2(p.ear.y - p.shoulder.y, p.ear.x - p.shoulder.x);
  context.save();
  context.translate(p.ear.x, p.ear.y);
  context.rotate(angle);
  const skin = context.createLinearGradient(0, -r(0.04), 0, r(0.04));
  skin.addColorStop(0, looks.skin);
  skin.addColorStop(1, looks.shade);
  context.fillStyle = skin;
  context.beginPath();
  context.ellipse(r(0.006), 0, r(0.049), r(0.037), 0, 0, 2 * Math.PI);
  context.fill();
  // the cap covers the crown and the back of the head
  context.fillStyle = looks.cap;
  context.beginPath();
  context.ellipse(
    r(0.009),
    -way * r(0.004),
    r(0.049),
    r(0.0365),
    0,
    way > 0 ? Math.PI * 0.86 : Math.PI * 0.14,
    way > 0 ? Math.PI * 2.2 : Math.PI * 0.86 - Math.PI * 1.06,
    way < 0,
  );
  context.fill();
  context.fillStyle = 'rgba(8,16,26,0.85)';
  context.beginPath();
  context.ellipse(r(0.034), way * r(0.021), r(0.011), r(0.0075), 0.5 * way, 0, 2 * Math.PI);
  context.fill();
  context.restore();
}

/** Bubbles that trail from the hands and the mouth and rise; where they were born is fixed by the swim itself. */
export function drawBubbles(
  context: SKRSContext2D,
  camera: Camera,
  bodyAt: (time: number) => BodyPoints,
  time: number,
  many: number,
): void {
  const random = seeded(29);
  for (let i = 0; i < many; i++) {
    const born = (i / many) * 8 - 0.6 + 0.1 * random();
    const age = time - born;
    const from = random() < 0.55 ? 'wrist' : random() < 0.6 ? 'ear' : 'toe';
    const jitter = random() - 0.5;
    const grow = random();
    if (age < 0 || age > 0.9) continue;
    const place = bodyAt(born)[from];
    if (place.y > -0.01) continue;
    const at = toPicture(camera, {
      x: place.x + 0.12 * jitter + 0.03 * Math.sin(9 * age + 7 * grow),
      y: Math.min(-0.01, place.y + 0.3 * age * (0.6 + grow)),
    });
    const radius = (0.006 + 0.012 * grow * grow) / camera.metresPerPixel;
    context.beginPath();
    context.arc(at.x, at.y, radius, 0, 2 * Math.PI);
    context.fillStyle = `rgba(235,250,255,${0.34 * (1 - age / 0.9)})`;
    context.fill();
    context.strokeStyle = `rgba(255,255,255,${0.5 * (1 - age / 0.9)})`;
    context.lineWidth = 1;
    context.stroke();
  }
}
