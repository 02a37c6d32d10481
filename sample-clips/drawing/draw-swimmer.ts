import { type Canvas, createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import type { Body, BodyPoints, PoolXY } from '../model/swimmer-model';
import type { Technique } from '../model/technique';
import { type Camera, toPicture, trailingEdge } from './camera';
import { drawArm, drawTrunkAndLeg, type Looks } from './draw-body';
import { drawHead } from './draw-head';
import { underWater } from './draw-surface';
import { movingLight } from './moving-light';

export type { Looks } from './draw-body';

/** How much smaller the far arm and leg look; they are drawn a little toward the middle of the picture. */
const farShrink = 0.962;

/** Where the tip of the fin is: beyond the toes, bent by the water as the foot moved a moment before. */
function finTipOf(bodyAt: (time: number) => Body, time: number, size: number): PoolXY {
  const now = bodyAt(time);
  const before = bodyAt(time - 0.05);
  const angle = Math.atan2(before.toe.y - before.ankle.y, before.toe.x - before.ankle.x);
  const lag = Math.atan2(now.toe.y - now.ankle.y, now.toe.x - now.ankle.x);
  const bend = angle + 0.25 * (angle - lag);
  return { x: now.toe.x + 0.15 * size * Math.cos(bend), y: now.toe.y + 0.15 * size * Math.sin(bend) };
}

/** The body as it was a moment before, carried along so that its hips are where they are now. */
function laggingBody(bodyAt: (time: number) => Body, time: number, lag: number): Body {
  const now = bodyAt(time).hip;
  const before = bodyAt(time - lag);
  const moved = Object.entries(before).map(([name, part]) => [
    name,
    typeof part === 'number'
      ? part
      : { ...part, x: part.x + now.x - before.hip.x, y: part.y + now.y - before.hip.y },
  ]);
  return { ...before, ...Object.fromEntries(moved) };
}

/**
 * Draws one swimmer from side on, lit by the water; sheets are kept between pictures by the caller. With a
 * `farLag` (seconds) the far arm and leg move that much later than the near ones, and cross them.
 */
export function drawSwimmer(
  context: SKRSContext2D,
  sheet: Canvas,
  camera: Camera,
  technique: Technique,
  looks: Looks,
  bodyAt: (time: number) => Body,
  time: number,
  farLag = 0,
): void {
  const body = bodyAt(time);
  const farBody = farLag === 0 ? body : laggingBody(bodyAt, time, farLag);
  const belly = technique.onBack ? -1 : 1;
  const scale = technique.size / 2.3;
  const finTip = finTipOf(bodyAt, time, technique.size);
  const near = (point: PoolXY): PoolXY => toPicture(camera, point, time);
  const eyeRow = camera.surfaceRow - camera.eye / camera.metresPerPixel;
  const far = (point: PoolXY): PoolXY => {
    const at = near(point);
    return {
      x: camera.width / 2 + (at.x - camera.width / 2) * farShrink,
      y: eyeRow + (at.y - eyeRow) * farShrink,
    };
  };
  const paint = sheet.getContext('2d');
  paint.globalCompositeOperation = 'source-over';
  paint.clearRect(0, 0, camera.width, camera.height);
  // the far limbs, dimmed by the water between
  drawArm(paint, farBody, looks, scale, far);
  drawTrunkAndLeg(paint, farBody, finTip, looks, scale, belly, far, true);
  paint.globalCompositeOperation = 'source-atop';
  paint.fillStyle = 'rgba(32,96,126,0.42)';
  paint.fillRect(0, 0, camera.width, camera.height);
  paint.globalCompositeOperation = 'source-over';
  const stretched = technique.arms === 'stretched';
  if (stretched) drawHead(paint, body, looks, scale, belly, near);
  drawTrunkAndLeg(paint, body, finTip, looks, scale, belly, near, false);
  if (!stretched) drawHead(paint, body, looks, scale, belly, near);
  drawArm(paint, body, looks, scale, near);
  lightBody(paint, camera, body, time);
  context.drawImage(sheet, 0, 0);
}

/** Moving light and the water's own colour on the part of the body that is under water. */
function lightBody(paint: SKRSContext2D, camera: Camera, body: BodyPoints, time: number): void {
  const { metresPerPixel } = camera;
  const spots = Object.values({ a: body.fingertip, b: body.toe, c: body.hip }).map((p) =>
    toPicture(camera, p, time),
  );
  const left = Math.floor(Math.min(...spots.map((p) => p.x)) - 0.5 / metresPerPixel);
  const wide = Math.ceil(Math.max(...spots.map((p) => p.x)) + 0.5 / metresPerPixel) - left;
  const top = Math.floor(camera.surfaceRow - 0.2 / metresPerPixel);
  const tall = Math.ceil(1.7 / metresPerPixel);
  const coarse = 3;
  const light = createCanvas(Math.ceil(wide / coarse), Math.ceil(tall / coarse));
  const lit = light.getContext('2d');
  const image = lit.createImageData(light.width, light.height);
  const edge = trailingEdge(camera, time);
  for (let j = 0; j < light.height; j++)
    for (let i = 0; i < light.width; i++) {
      const column = left + (i + 0.5) * coarse;
      const x = edge + (camera.travel === 'right' ? column : camera.width - column) * metresPerPixel;
      const y = (camera.surfaceRow - (top + (j + 0.5) * coarse)) * metresPerPixel;
      const at = 4 * (j * light.width + i);
      image.data[at] = 255;
      image.data[at + 1] = 250;
      image.data[at + 2] = 225;
      image.data[at + 3] =
        105 * Math.exp(y / 1.6) * movingLight(1.15 * x + 0.3 * y, 1.5 * y + 0.4, 1.2 * time);
    }
  lit.putImageData(image, 0, 0);
  paint.save();
  underWater(paint, camera, time);
  paint.clip();
  paint.globalCompositeOperation = 'source-atop';
  paint.drawImage(light, left, top, light.width * coarse, light.height * coarse);
  const tint = paint.createLinearGradient(0, camera.surfaceRow, 0, camera.surfaceRow + 1.6 / metresPerPixel);
  tint.addColorStop(0, 'rgba(60,164,190,0.1)');
  tint.addColorStop(1, 'rgba(26,110,150,0.3)');
  paint.fillStyle = tint;
  paint.fillRect(0, 0, camera.width, camera.height);
  paint.restore();
}
