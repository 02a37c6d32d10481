import { beforeAll, describe, expect, it } from 'vitest';
import { cameraMoves, cameraStood } from '../../../shared-core/follow/camera-moves';
import type { WholePicture } from '#core/follow/whole-picture';
import type { Vision } from '#core/follow/vision';
import { openVision } from '../../bench/follow/open-vision';

let vision: Vision;
beforeAll(async () => {
  vision = await openVision();
});

const [width, height, step] = [320, 180, 2];
interface Move {
  /** Pixels of the shown picture. */
  readonly x?: number;
  readonly y?: number;
  /** Radians, and a share, about the picture's middle. */
  readonly turn?: number;
  readonly growth?: number;
}

/** A pool wall without repetition, as a camera that did `move` sees it, and light that runs over its lowest third. */
function picture(frame: number, { x = 0, y = 0, turn = 0, growth = 0 }: Move): WholePicture {
  const grey = new Uint8Array(width * height);
  const [cos, sin] = [Math.cos(-turn) / (1 + growth), Math.sin(-turn) / (1 + growth)];
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const [u, v] = [column - width / 2 - x / step, row - height / 2 - y / step];
      const [p, q] = [cos * u - sin * v, sin * u + cos * v];
      const wall =
        30 * Math.sin(p / 5.3 + 2 * Math.sin(q / 11)) + 30 * Math.sin(q / 6.1 + 2 * Math.cos(p / 17));
      const light = row > 0.7 * height ? 45 * Math.sin((column - 3 * frame) / 6 + row / 9) : 0;
      grey[row * width + column] = Math.round(120 + wall + light);
    }
  return { frame, step, width, height, grey };
}

const frames = [0, 6, 12, 18, 24];
const filmed = (move: (frame: number) => Move): readonly WholePicture[] =>
  frames.map((frame) => picture(frame, move(frame)));
const body = () => [{ x: 320, y: 180 }];
const bodyLength = 240;

describe('what the camera did', () => {
  it('was to stand, though light ran over the floor', () => {
    const stood = cameraStood(
      vision,
      filmed(() => ({})),
      body,
      bodyLength,
    );
    expect(stood).toMatchObject({ frames: [0, 24], rows: [], moved: [] });
    expect(stood?.turned?.degrees).toBeLessThan(0.02);
  });

  it.each([
    ['went along slowly, a tenth of a pixel a picture', (frame: number): Move => ({ x: 0.1 * frame })],
    ['turned by two degrees', (frame: number): Move => ({ turn: (2 * Math.PI * frame) / 180 / 24 })],
    ['zoomed by three hundredths', (frame: number): Move => ({ growth: (0.03 * frame) / 24 })],
    ['swayed and came back', (frame: number): Move => ({ y: 5 * Math.sin((Math.PI * frame) / 24) })],
  ])('was not to stand when it %s', (_, move) => {
    expect(cameraStood(vision, filmed(move), body, bodyLength)).toBeNull();
  });

  it.each([
    { x: -0.4, y: 0, degrees: 0, zoom: 0 },
    { x: 0.1, y: 0.3, degrees: 1.2, zoom: 0.03 },
  ])('is told: $x and $y pixels a picture, $degrees degrees and $zoom larger at the end', (made) => {
    const run = cameraMoves(
      vision,
      filmed((frame) => ({
        x: made.x * frame,
        y: made.y * frame,
        turn: (((made.degrees * Math.PI) / 180) * frame) / 24,
        growth: (made.zoom * frame) / 24,
      })),
      body,
      bodyLength,
    );
    // flow over pictures half the size: a tenth of a degree, half a hundredth
    expect(Math.abs((run?.turned?.degrees ?? 90) - made.degrees)).toBeLessThan(0.1);
    expect(Math.abs((run?.turned?.zoom ?? 1) - made.zoom)).toBeLessThan(0.005);
    const middle = run?.rows.findIndex((row) => row > 150 && row < 180) ?? -1;
    const [x, y] = run?.moved[middle]?.at(-1) ?? [90, 90];
    // this row lies above what the picture turned and grew about
    const off = (run?.rows[middle] ?? 0) - 180;
    const turned = (-made.degrees * Math.PI * off) / 180;
    expect(Math.hypot(x - 24 * made.x - turned, y - 24 * made.y - made.zoom * off)).toBeLessThan(0.7);
  });
});
