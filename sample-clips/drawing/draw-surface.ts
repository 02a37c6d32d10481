import type { SKRSContext2D } from '@napi-rs/canvas';
import { waterSurface } from '../model/water-surface';
import { type Camera, toPicture, trailingEdge } from './camera';

/** Picture points of the drawn surface in the swimmer's plane, from one picture edge to the other. */
function surfaceLine(camera: Camera, time: number): { readonly x: number; readonly y: number }[] {
  const edge = trailingEdge(camera, time);
  const points: { x: number; y: number }[] = [];
  for (let column = -8; column <= camera.width + 8; column += 4) {
    const x = edge + (camera.travel === 'right' ? column : camera.width - column) * camera.metresPerPixel;
    points.push({ x: column, y: toPicture(camera, { x, y: waterSurface(x, time) }, time).y });
  }
  return points;
}

/** A path around everything under the surface in the swimmer's plane. */
export function underWater(context: SKRSContext2D, camera: Camera, time: number): void {
  context.beginPath();
  for (const { x, y } of surfaceLine(camera, time)) context.lineTo(x, y);
  context.lineTo(camera.width + 8, camera.height);
  context.lineTo(-8, camera.height);
  context.closePath();
}

/** The water's edge on the lens: a dark line under a bright one, and a glow below. Drawn over the swimmer. */
export function drawSurface(context: SKRSContext2D, camera: Camera, time: number): void {
  if (camera.eye < -0.1) return;
  const points = surfaceLine(camera, time);
  const trace = (down: number): void => {
    context.beginPath();
    for (const { x, y } of points) context.lineTo(x, y + down);
  };
  const unit = 1 / camera.metresPerPixel;
  context.save();
  underWater(context, camera, time);
  context.clip();
  const glow = context.createLinearGradient(0, camera.surfaceRow, 0, camera.surfaceRow + 0.13 * unit);
  glow.addColorStop(0, 'rgba(214,246,246,0.55)');
  glow.addColorStop(1, 'rgba(214,246,246,0)');
  context.fillStyle = glow;
  context.fillRect(0, camera.surfaceRow - 0.03 * unit, camera.width, 0.2 * unit);
  context.restore();
  context.lineWidth = Math.max(2, 0.018 * unit);
  context.strokeStyle = 'rgba(18,84,110,0.32)';
  trace(0.012 * unit);
  context.stroke();
  context.lineWidth = Math.max(1.5, 0.011 * unit);
  context.strokeStyle = 'rgba(246,254,254,0.85)';
  trace(0);
  context.stroke();
}
