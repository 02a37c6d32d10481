import type { SKRSContext2D } from '@napi-rs/canvas';
import { seeded } from '../model/seeded';
import type { Camera } from './camera';

/** Water, light, floor with its line, and a lane rope behind the swimmer; `time` moves the light. */
export function drawPool(context: SKRSContext2D, camera: Camera, time: number): void {
  const { width, height, surfaceRow, metresPerPixel } = camera;
  const metre = 1 / metresPerPixel;
  const water = context.createLinearGradient(0, 0, 0, height);
  water.addColorStop(0, '#bfe9ee');
  water.addColorStop(Math.min(0.9, surfaceRow / height), '#66bccd');
  water.addColorStop(Math.min(0.95, surfaceRow / height + 0.12), '#2f93b3');
  water.addColorStop(1, '#0d4d70');
  context.fillStyle = water;
  context.fillRect(0, 0, width, height);
  drawBeams(context, camera, time);
  const floorRow = Math.min(height * 0.86, surfaceRow + 1.8 * metre);
  drawFloor(context, camera, floorRow, time);
  // far lane rope: floats on the surface, farther than the swimmer
  const float = 0.16 * metre;
  for (let i = -1; i * float < width + float; i++) {
    context.fillStyle = i % 2 === 0 ? 'rgba(224,70,60,0.55)' : 'rgba(240,244,246,0.55)';
    const bob = 1.5 * Math.sin(i * 0.8 + 2.1 * time);
    context.beginPath();
    context.roundRect(i * float + 2, surfaceRow - 5 + bob, float - 4, 10, 4);
    context.fill();
  }
}

function drawBeams(context: SKRSContext2D, { width, height, surfaceRow }: Camera, time: number): void {
  const random = seeded(11);
  for (let i = 0; i < 16; i++) {
    const at = ((random() * 1.3 * width + 22 * time * (0.5 + random())) % (1.3 * width)) - 0.1 * width;
    const wide = 18 + 60 * random();
    const strength = (0.03 + 0.05 * random()) * (0.7 + 0.3 * Math.sin(1.7 * time + 6 * random()));
    const beam = context.createLinearGradient(0, surfaceRow, 0, height);
    beam.addColorStop(0, `rgba(255,255,255,${strength})`);
    beam.addColorStop(1, 'rgba(255,255,255,0)');
    context.fillStyle = beam;
    context.beginPath();
    context.moveTo(at, surfaceRow);
    context.lineTo(at + wide, surfaceRow);
    context.lineTo(at + wide - 190, height);
    context.lineTo(at - 190 - wide, height);
    context.fill();
  }
}

function drawFloor(context: SKRSContext2D, camera: Camera, floorRow: number, time: number): void {
  const { width, height } = camera;
  const floor = context.createLinearGradient(0, floorRow, 0, height);
  floor.addColorStop(0, '#2a7d9c');
  floor.addColorStop(1, '#135a7c');
  context.fillStyle = floor;
  context.fillRect(0, floorRow, width, height - floorRow);
  context.strokeStyle = 'rgba(10,52,78,0.55)';
  context.lineWidth = 1;
  for (let i = -20; i < 40; i++) {
    context.beginPath();
    context.moveTo(width / 2 + (i - 10) * 46, floorRow);
    context.lineTo(width / 2 + (i - 10) * 96, height);
    context.stroke();
  }
  for (let row = 0; row < 5; row++) {
    const y = floorRow + (height - floorRow) * (row / 5) ** 1.4;
    context.beginPath();
    context.moveTo(0, y);
    context.lineTo(width, y);
    context.stroke();
  }
  context.fillStyle = 'rgba(6,26,42,0.75)';
  context.fillRect(0, floorRow + (height - floorRow) * 0.34, width, (height - floorRow) * 0.2);
  // moving light on the floor: two crossing sets of bright waves
  context.lineWidth = 2;
  for (let set = 0; set < 2; set++)
    for (let i = 0; i < 26; i++) {
      context.strokeStyle = `rgba(220,250,255,${0.05 + 0.05 * ((i * 7) % 3)})`;
      context.beginPath();
      for (let x = -40; x <= width + 40; x += 20) {
        const y =
          floorRow +
          ((i + 0.5) / 26) * (height - floorRow) +
          7 * Math.sin(x / (31 + 5 * set) + i * 1.9 + (set ? -1.9 : 1.4) * time);
        if (x === -40) context.moveTo(x, y);
        else context.lineTo(x, y);
      }
      context.stroke();
    }
}

/** The moving surface, drawn over the swimmer: what is above it is seen through air, dimly. */
export function drawSurface(context: SKRSContext2D, { width, surfaceRow }: Camera, time: number): void {
  const row = (x: number): number =>
    surfaceRow + 2.6 * Math.sin(x / 43 + 2.3 * time) + 1.6 * Math.sin(x / 17 - 3.1 * time);
  context.beginPath();
  context.moveTo(0, 0);
  context.lineTo(0, row(0));
  for (let x = 0; x <= width; x += 6) context.lineTo(x, row(x));
  context.lineTo(width, 0);
  context.closePath();
  context.fillStyle = 'rgba(214,240,243,0.42)';
  context.fill();
  context.beginPath();
  for (let x = 0; x <= width; x += 6) context.lineTo(x, row(x));
  context.strokeStyle = 'rgba(255,255,255,0.75)';
  context.lineWidth = 2;
  context.stroke();
}
