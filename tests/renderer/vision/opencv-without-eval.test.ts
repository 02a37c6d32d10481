import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { execa } from 'execa';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { opencvWithoutEval } from '../../../renderer/vision/opencv-without-eval';

const script = readFileSync(createRequire(import.meta.url).resolve('@techstark/opencv-js'), 'utf8');

it('runs flow where making code from text is forbidden', async () => {
  const folder = await mkdtemp(path.join(tmpdir(), 'opencv-'));
  try {
    await writeFile(path.join(folder, 'opencv.cjs'), opencvWithoutEval(script));
    await writeFile(
      path.join(folder, 'try.cjs'),
      `const cv = require('./opencv.cjs');
      cv.onRuntimeInitialized = () => {
        const a = new cv.Mat(90, 90, cv.CV_8UC1), b = new cv.Mat(90, 90, cv.CV_8UC1);
        const grey = (x, y) => 120 + 60 * Math.sin(x / 5) * Math.cos(y / 7);
        for (let y = 0; y < 90; y++) for (let x = 0; x < 90; x++) {
          a.data[90 * y + x] = grey(x, y);
          b.data[90 * y + x] = grey(x - 2, y + 1);
        }
        const from = cv.matFromArray(1, 1, cv.CV_32FC2, [45, 45]), to = new cv.Mat();
        cv.calcOpticalFlowPyrLK(a, b, from, to, new cv.Mat(), new cv.Mat(), new cv.Size(21, 21), 2);
        console.log(JSON.stringify([...to.data32F]));
      };`,
    );
    const { stdout } = await execa(process.execPath, [
      '--disallow-code-generation-from-strings',
      path.join(folder, 'try.cjs'),
    ]);
    const [x, y] = JSON.parse(stdout) as [number, number];
    expect(x).toBeCloseTo(47, 1);
    expect(y).toBeCloseTo(44, 1);
  } finally {
    await rm(folder, { recursive: true });
  }
}, 30_000);

it('says so when the script is not the one it knows', () => {
  expect(() => opencvWithoutEval('var cv = {}')).toThrow(/has changed/);
});
