import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas';
import { type Camera, columnOf, rowOf, shrink, trailingEdge } from './camera';
import { lightShaft, movingLight } from './moving-light';

export const poolDepth = 2.1;
/** Half the width of the dark line on the floor under the swimmer, metres. */
export const floorLineHalf = 0.125;
/** Metres from the swimmer's plane back to the far wall. */
const wall = 5.5;
const ropes = [1.25, 3.75];

/** Everything behind the swimmer: hall or surface from underneath, wall, floor with its line, ropes, shafts of light. */
export function drawPool(context: SKRSContext2D, camera: Camera, time: number): void {
  drawWater(context, camera);
  drawWall(context, camera, time);
  drawFloor(context, camera, time);
  if (camera.eye < -0.1) drawCeiling(context, camera, time);
  else drawHall(context, camera, time);
  for (const behind of [...ropes].reverse()) drawRope(context, camera, behind, time);
  drawShafts(context, camera, time);
}

function drawWater(context: SKRSContext2D, { width, height, surfaceRow }: Camera): void {
  const water = context.createLinearGradient(0, Math.max(0, surfaceRow), 0, height);
  water.addColorStop(0, '#7fd0dd');
  water.addColorStop(0.12, '#4fb3cb');
  water.addColorStop(0.45, '#2c8fb2');
  water.addColorStop(1, '#176a92');
  context.fillStyle = water;
  context.fillRect(0, 0, width, height);
}

function line(context: SKRSContext2D, x0: number, y0: number, x1: number, y1: number): void {
  context.beginPath();
  context.moveTo(x0, y0);
  context.lineTo(x1, y1);
  context.stroke();
}

function drawWall(context: SKRSContext2D, camera: Camera, time: number): void {
  const top = rowOf(camera, 0, wall);
  const foot = rowOf(camera, -poolDepth, wall);
  const haze = context.createLinearGradient(0, top, 0, foot);
  haze.addColorStop(0, 'rgba(150,222,230,0.75)');
  haze.addColorStop(0.25, 'rgba(92,186,206,0.8)');
  haze.addColorStop(1, 'rgba(52,140,172,0.85)');
  context.fillStyle = haze;
  context.fillRect(0, top, camera.width, foot - top);
  context.lineWidth = 1;
  context.strokeStyle = 'rgba(20,90,125,0.16)';
  for (let height = 0.3; height < poolDepth; height += 0.3) {
    const row = rowOf(camera, -height, wall);
    line(context, 0, row, camera.width, row);
  }
  const from = Math.floor(trailingEdge(camera, time)) - 8;
  for (let x = from; x < from + 26; x += 0.5) {
    const column = columnOf(camera, x, wall, time);
    line(context, column, top, column, foot);
  }
}

function drawFloor(context: SKRSContext2D, camera: Camera, time: number): void {
  const { width, height } = camera;
  const far = rowOf(camera, -poolDepth, wall);
  const floor = context.createLinearGradient(0, far, 0, height);
  floor.addColorStop(0, '#3a93b3');
  floor.addColorStop(0.35, '#3f9fbd');
  floor.addColorStop(1, '#2b86a9');
  context.fillStyle = floor;
  context.fillRect(0, far, width, height - far);
  const seam = context.createLinearGradient(0, far - 26, 0, far + 26);
  seam.addColorStop(0, 'rgba(18,84,118,0)');
  seam.addColorStop(0.5, 'rgba(18,84,118,0.45)');
  seam.addColorStop(1, 'rgba(18,84,118,0)');
  context.fillStyle = seam;
  context.fillRect(0, far - 26, width, 52);
  const nearest = -4.4;
  context.lineWidth = 1.2;
  const tile = 0.5;
  for (let behind = wall; behind > nearest; behind -= tile) {
    const row = rowOf(camera, -poolDepth, behind);
    context.strokeStyle = `rgba(14,74,106,${0.1 + 0.22 * Math.min(1, shrink(behind) / 2)})`;
    line(context, 0, row, width, row);
  }
  const from = Math.floor(trailingEdge(camera, time)) - 9;
  context.strokeStyle = 'rgba(14,74,106,0.24)';
  for (let x = from; x < from + 28; x += tile)
    line(
      context,
      columnOf(camera, x, wall, time),
      far,
      columnOf(camera, x, nearest, time),
      rowOf(camera, -poolDepth, nearest),
    );
  // the lane's floor line lies under the swimmer; the next lane's is farther off
  for (const behind of [2.5, 0]) {
    const back = rowOf(camera, -poolDepth, behind + floorLineHalf);
    const front = rowOf(camera, -poolDepth, behind - floorLineHalf);
    context.fillStyle = behind === 0 ? 'rgba(10,38,62,0.86)' : 'rgba(14,52,80,0.7)';
    context.fillRect(0, back, width, front - back);
  }
  drawFloorLight(context, camera, far, time);
}

/** The moving net of light on the floor, worked out on a coarse grid in the floor's own perspective. */
function drawFloorLight(context: SKRSContext2D, camera: Camera, far: number, time: number): void {
  const { width, height, metresPerPixel } = camera;
  const coarse = 3;
  const across = Math.ceil(width / coarse);
  const down = Math.ceil((height - far) / coarse);
  if (down < 1) return;
  const small = createCanvas(across, down);
  const paint = small.getContext('2d');
  const image = paint.createImageData(across, down);
  const edge = trailingEdge(camera, time);
  for (let j = 0; j < down; j++) {
    const row = far + (j + 0.5) * coarse;
    // metres under the lens in the swimmer's plane decide how near this part of the floor is
    const below = (row - camera.surfaceRow) * metresPerPixel + camera.eye;
    const scale = below / (poolDepth + camera.eye);
    const behind = 6 / scale - 6;
    const fade = Math.min(1, 0.25 + 0.75 * ((row - far) / (height - far)));
    for (let i = 0; i < across; i++) {
      const off = (((i + 0.5) * coarse - width / 2) * metresPerPixel) / scale;
      const x = edge + (width / 2) * metresPerPixel + (camera.travel === 'right' ? off : -off);
      const at = 4 * (j * across + i);
      image.data[at] = 225;
      image.data[at + 1] = 252;
      image.data[at + 2] = 255;
      image.data[at + 3] = 140 * fade * movingLight(0.55 * x, 0.55 * behind, time);
    }
  }
  paint.putImageData(image, 0, 0);
  context.save();
  context.globalCompositeOperation = 'soft-light';
  context.drawImage(small, 0, far, across * coarse, down * coarse);
  context.globalCompositeOperation = 'screen';
  context.globalAlpha = 0.42;
  context.drawImage(small, 0, far, across * coarse, down * coarse);
  context.restore();
}

/** Air over the water: a pale hall, out of focus. */
function drawHall(context: SKRSContext2D, camera: Camera, time: number): void {
  const { width } = camera;
  const row = rowOf(camera, 0, wall);
  const air = context.createLinearGradient(0, 0, 0, row);
  air.addColorStop(0, '#dfe9ec');
  air.addColorStop(0.7, '#c3d5da');
  air.addColorStop(1, '#9fc0c8');
  context.fillStyle = air;
  context.fillRect(0, 0, width, row);
  const edge = trailingEdge(camera, time);
  context.save();
  context.filter = `blur(${Math.round(width / 180)}px)`;
  for (let i = -6; i < 12; i++) {
    const x = Math.floor(edge / 2.2) * 2.2 + i * 2.2;
    const left = columnOf(camera, x, 12, time);
    const right = columnOf(camera, x + 1.5, 12, time);
    const sill = rowOf(camera, 1.5, 12);
    context.fillStyle = 'rgba(250,253,253,0.8)';
    context.fillRect(Math.min(left, right), -20, Math.abs(right - left), sill + 20);
  }
  const deck = rowOf(camera, 0.32, wall);
  context.fillStyle = 'rgba(112,146,156,0.75)';
  context.fillRect(-20, deck, width + 40, row - deck);
  context.fillStyle = 'rgba(236,240,238,0.75)';
  context.fillRect(-20, deck - 0.04 / camera.metresPerPixel, width + 40, 0.05 / camera.metresPerPixel);
  context.restore();
}

/** The surface from underneath: a bright, restless mirror. */
function drawCeiling(context: SKRSContext2D, camera: Camera, time: number): void {
  const { width, metresPerPixel } = camera;
  const far = rowOf(camera, 0, wall);
  if (far <= 0) return;
  const glow = context.createLinearGradient(0, 0, 0, far);
  glow.addColorStop(0, '#c9f0f2');
  glow.addColorStop(0.6, '#8fd6e0');
  glow.addColorStop(1, '#6cc2d2');
  context.fillStyle = glow;
  context.fillRect(0, 0, width, far);
  const coarse = 3;
  const across = Math.ceil(width / coarse);
  const down = Math.ceil(far / coarse);
  const small = createCanvas(across, down);
  const paint = small.getContext('2d');
  const image = paint.createImageData(across, down);
  const edge = trailingEdge(camera, time);
  for (let j = 0; j < down; j++) {
    const above = (camera.surfaceRow - (j + 0.5) * coarse) * metresPerPixel - camera.eye;
    const scale = above / -camera.eye;
    const behind = 6 / scale - 6;
    for (let i = 0; i < across; i++) {
      const off = (((i + 0.5) * coarse - width / 2) * metresPerPixel) / scale;
      const x = edge + (width / 2) * metresPerPixel + (camera.travel === 'right' ? off : -off);
      const swell =
        Math.sin(2.6 * x + 1.2 * behind - 1.7 * time) +
        Math.sin(1.3 * x - 3.1 * behind + 1.3 * time + 0.7 * Math.sin(1.9 * x)) +
        0.7 * Math.sin(4.9 * x + 4.3 * behind + 2.3 * time);
      const bright = swell > 0;
      const at = 4 * (j * across + i);
      image.data[at] = bright ? 255 : 14;
      image.data[at + 1] = bright ? 255 : 96;
      image.data[at + 2] = bright ? 255 : 134;
      image.data[at + 3] = Math.min(255, 62 * Math.abs(swell));
    }
  }
  paint.putImageData(image, 0, 0);
  context.drawImage(small, 0, 0, across * coarse, down * coarse);
  const soft = context.createLinearGradient(0, far - 50, 0, far + 34);
  soft.addColorStop(0, 'rgba(122,206,220,0)');
  soft.addColorStop(0.6, 'rgba(122,206,220,0.95)');
  soft.addColorStop(1, 'rgba(122,206,220,0)');
  context.fillStyle = soft;
  context.fillRect(0, far - 50, width, 84);
}

/** A lane rope of floats, half under; farther ropes are paler. */
function drawRope(context: SKRSContext2D, camera: Camera, behind: number, time: number): void {
  const size = shrink(behind) / camera.metresPerPixel;
  const radius = 0.055 * size;
  const pale = behind > 2 ? 0.5 : 0.85;
  const from = Math.floor(trailingEdge(camera, time)) - 8;
  for (let i = 0; i < 150; i++) {
    const x = from + i * 0.14;
    const column = columnOf(camera, x, behind, time);
    if (column < -20 || column > camera.width + 20) continue;
    const row = rowOf(camera, 0.012 * Math.sin(2.2 * x - 2.1 * time + behind), behind);
    const red = Math.floor(i / 4 + from / 0.56) % 2 === 0;
    context.fillStyle = red ? `rgba(206,66,58,${pale})` : `rgba(240,246,247,${pale})`;
    context.beginPath();
    context.roundRect(column - 0.062 * size, row - radius, 0.124 * size, 2 * radius, 0.02 * size);
    context.fill();
    context.fillStyle = 'rgba(8,50,74,0.22)';
    context.fillRect(column - 0.062 * size, row, 0.124 * size, radius);
  }
}

/** Slanting shafts of light, soft because they are worked out coarsely and stretched. */
function drawShafts(context: SKRSContext2D, camera: Camera, time: number): void {
  const { width, height, metresPerPixel } = camera;
  const top = camera.eye < -0.1 ? rowOf(camera, 0, wall) : camera.surfaceRow;
  const coarse = 10;
  const across = Math.ceil(width / coarse);
  const down = Math.ceil((height - top) / coarse);
  if (down < 1) return;
  const small = createCanvas(across, down);
  const paint = small.getContext('2d');
  const image = paint.createImageData(across, down);
  const edge = trailingEdge(camera, time);
  for (let j = 0; j < down; j++) {
    const below = (j + 0.5) * coarse * metresPerPixel;
    const fade = Math.exp(-below / 1.3) * Math.min(1, below / 0.15);
    for (let i = 0; i < across; i++) {
      const at = 4 * (j * across + i);
      image.data[at] = 235;
      image.data[at + 1] = 252;
      image.data[at + 2] = 255;
      image.data[at + 3] =
        105 * fade * lightShaft(edge + (i + 0.5) * coarse * metresPerPixel + 0.32 * below, time);
    }
  }
  paint.putImageData(image, 0, 0);
  context.save();
  context.globalCompositeOperation = 'screen';
  context.drawImage(small, 0, top, across * coarse, down * coarse);
  context.restore();
}
