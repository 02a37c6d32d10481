import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { execa } from 'execa';
import { expect, it } from 'vitest';
import { findMediaTool } from '../../electron/media/find-media-tool';
import { enlarged, hardships, hardVariant, makeHardVariant } from '../../sample-clips/hard-variant';
import { readPictureNumber } from '../../sample-clips/picture-number';
import { type Scenario, scenarios } from '../../sample-clips/scenario';

const ffmpeg = await findMediaTool('ffmpeg');
const ffprobe = await findMediaTool('ffprobe');
if (!ffmpeg || !ffprobe) console.warn('no ffmpeg: no hard variant is drawn');
const first = scenarios[0] as Scenario;
// a quarter of the picture: what is looked at here does not hang on its size, the time to draw it does
const short = { ...enlarged(first, 0.5), pictures: 6 };

it('a larger picture shows the same swim', () => {
  const big = enlarged(first, 1.5);
  expect([big.camera.width, big.camera.height]).toEqual([1920, 1080]);
  expect(big.camera.width * big.camera.metresPerPixel).toBeCloseTo(
    first.camera.width * first.camera.metresPerPixel,
    9,
  );
});

it('at 25 a second a variant lasts as long as its clip', () => {
  const slow = hardVariant(first, 'twenty-five-a-second');
  expect(slow.pictures / slow.captureRate).toBeCloseTo(first.pictures / first.captureRate, 1);
});

it.skipIf(!ffmpeg || !ffprobe).each(hardships)(
  '%s: still carries its numbers, and its truth fits its pictures',
  async (hardship) => {
    const folder = await mkdtemp(path.join(tmpdir(), 'hard-variant-'));
    try {
      const { clip, truth, scenario } = await makeHardVariant(short, hardship, folder);
      const { width, height } = scenario.camera;
      expect(truth.points.length).toBe(scenario.pictures);
      const { stdout } = await execa(
        ffmpeg?.path ?? '',
        ['-v', 'error', '-i', clip.file, '-f', 'rawvideo', '-pix_fmt', 'rgba', '-'],
        { encoding: 'buffer', maxBuffer: 64e6 },
      );
      const size = width * height * 4;
      const numbers = Array.from({ length: scenario.pictures }, (_, i) =>
        readPictureNumber(stdout.subarray(i * size, (i + 1) * size), width, height),
      );
      expect(numbers).toEqual(Array.from({ length: scenario.pictures }, (_, i) => i));
    } finally {
      await rm(folder, { recursive: true });
    }
  },
);
