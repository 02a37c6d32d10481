import fc from 'fast-check';
import { expect, it } from 'vitest';
import { numberBits, numberPattern, numberStrip, readPictureNumber } from '../../sample-clips/picture-number';

const white = 235;
const black = 20;

/** A grey picture with the strip painted by hand. */
function painted(width: number, height: number, pattern: readonly boolean[]): Uint8ClampedArray {
  const pixels = new Uint8ClampedArray(width * height * 4).fill(128);
  const { left, top, block } = numberStrip(width, height);
  pattern.forEach((light, i) => {
    for (let y = top; y < top + block; y++)
      for (let x = left + i * block; x < left + (i + 1) * block; x++)
        pixels.fill(light ? white : black, 4 * (y * width + x), 4 * (y * width + x) + 3);
  });
  return pixels;
}

it('reads back every number it can carry, at any size', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 2 ** numberBits - 1 }),
      fc.constantFrom([1280, 720], [720, 1280], [960, 540], [640, 360]),
      (number, [width = 0, height = 0]) => {
        expect(readPictureNumber(painted(width, height, numberPattern(number)), width, height)).toBe(number);
      },
    ),
    { numRuns: 60 },
  );
});

it('says nothing rather than a wrong number', () => {
  const [width, height] = [640, 360];
  const pattern = numberPattern(397);
  for (let i = 0; i < pattern.length; i++) {
    const flipped = pattern.map((light, k) => (k === i ? !light : light));
    expect(readPictureNumber(painted(width, height, flipped), width, height)).toBeNull();
  }
  expect(readPictureNumber(painted(width, height, [...pattern].reverse()), width, height)).toBeNull();
  expect(readPictureNumber(new Uint8ClampedArray(width * height * 4).fill(128), width, height)).toBeNull();
});
