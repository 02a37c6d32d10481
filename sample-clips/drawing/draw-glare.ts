import type { SKRSContext2D } from '@napi-rs/canvas';
import type { Camera } from './camera';

/** The sun on the lens: a veil over everything and wandering bright patches. `strength` from 0 to 1. */
export function drawGlare(context: SKRSContext2D, camera: Camera, strength: number, time: number): void {
  const { width, height } = camera;
  context.save();
  context.globalCompositeOperation = 'screen';
  context.fillStyle = `rgba(225,240,240,${0.22 * strength})`;
  context.fillRect(0, 0, width, height);
  for (let i = 0; i < 4; i++) {
    const x = width * (0.5 + 0.42 * Math.sin(0.7 * time + 1.9 * i));
    const y = height * (0.3 + 0.14 * Math.sin(1.1 * time + 2.7 * i));
    const radius = width * (0.1 + 0.05 * Math.sin(1.7 * time + i));
    const patch = context.createRadialGradient(x, y, 0, x, y, radius);
    patch.addColorStop(0, `rgba(255,255,246,${strength})`);
    patch.addColorStop(1, 'rgba(255,255,246,0)');
    context.fillStyle = patch;
    context.fillRect(x - radius, y - radius, 2 * radius, 2 * radius);
  }
  context.restore();
}
