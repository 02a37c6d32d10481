import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layerFromRgba, layOver } from '#electron/video/layer';
import { blackenBox, blackPlanes, copyInto } from '#electron/video/planes';
import { resample } from '#electron/video/resample';

const at = { left: 2, top: 2, width: 2, height: 2 };
const solid = (r: number, g: number, b: number, a: number): Uint8Array =>
  Uint8Array.from(Array.from({ length: 4 }, () => [r, g, b, a]).flat());

describe('a picture in planes', () => {
  it('takes colours by BT.709 in the limited range', () => {
    // by hand from ITU-R BT.709 (8 bit): red 63 102 240, green 173 42 26, blue 32 240 118, white 235 128 128
    for (const [rgb, yuv] of [
      [
        [255, 0, 0],
        [63, 102, 240],
      ],
      [
        [0, 255, 0],
        [173, 42, 26],
      ],
      [
        [0, 0, 255],
        [32, 240, 118],
      ],
      [
        [255, 255, 255],
        [235, 128, 128],
      ],
      [
        [0, 0, 0],
        [16, 128, 128],
      ],
    ] as const) {
      const planes = blackPlanes(8, 8);
      layOver(planes, layerFromRgba(solid(rgb[0], rgb[1], rgb[2], 255), at));
      expect([planes.bytes[2 * 8 + 2], planes.bytes[64 + 4 + 1], planes.bytes[80 + 4 + 1]]).toEqual([...yuv]);
      expect(planes.bytes[0]).toBe(16);
      expect(planes.bytes[64]).toBe(128);
    }
  });

  it('lies between what was there and what is laid over, by how much it covers', () => {
    fc.assert(
      fc.property(fc.nat(255), fc.nat(255), (grey, alpha) => {
        const planes = blackPlanes(8, 8);
        layOver(planes, layerFromRgba(solid(grey, grey, grey, alpha), at));
        const full = 16 + (219 * grey) / 255;
        expect(
          Math.abs((planes.bytes[2 * 8 + 2] ?? 0) - (16 + ((full - 16) * alpha) / 255)),
        ).toBeLessThanOrEqual(1);
        expect(planes.bytes[64 + 5]).toBe(128);
      }),
    );
  });

  it('leaves out what lies outside the picture and outside the columns', () => {
    const planes = blackPlanes(8, 8);
    const layer = layerFromRgba(new Uint8Array(8 * 8 * 4).fill(255), {
      left: 4,
      top: -4,
      width: 8,
      height: 8,
    });
    layOver(planes, layer, { from: 6, to: 8 });
    const bright = [...planes.bytes.subarray(0, 64)].flatMap((value, index) =>
      value === 235 ? [index] : [],
    );
    expect(bright).toEqual([0, 1, 2, 3].flatMap((row) => [row * 8 + 6, row * 8 + 7]));
  });

  it('copies a smaller picture where it belongs, colours and all', () => {
    const target = blackPlanes(8, 8);
    const source = { width: 4, height: 2, bytes: Uint8Array.from([1, 2, 3, 4, 5, 6, 7, 8, 50, 51, 60, 61]) };
    copyInto(target, source, 2, 4);
    expect([...target.bytes.subarray(4 * 8 + 2, 4 * 8 + 6)]).toEqual([1, 2, 3, 4]);
    expect([...target.bytes.subarray(5 * 8 + 2, 5 * 8 + 6)]).toEqual([5, 6, 7, 8]);
    expect([...target.bytes.subarray(64 + 2 * 4 + 1, 64 + 2 * 4 + 3)]).toEqual([50, 51]);
    expect([...target.bytes.subarray(80 + 2 * 4 + 1, 80 + 2 * 4 + 3)]).toEqual([60, 61]);
    expect(target.bytes[4 * 8 + 1]).toBe(16);
  });

  it('is black again in a box, and only there', () => {
    const planes = blackPlanes(8, 8);
    planes.bytes.fill(200);
    blackenBox(planes, { x: 2, y: 4, width: 4, height: 2 });
    const black = (from: number, to: number, value: number): number[] =>
      [...planes.bytes.subarray(from, to)].flatMap((each, index) => (each === value ? [index] : []));
    expect(black(0, 64, 16)).toEqual([34, 35, 36, 37, 42, 43, 44, 45]);
    expect(black(64, 80, 128)).toEqual([9, 10]);
    expect(black(80, 96, 128)).toEqual([9, 10]);
  });

  it('shows a part of itself larger or smaller: a slope stays a slope, a plain stays plain', () => {
    const source = blackPlanes(64, 32);
    for (let y = 0; y < 32; y++) for (let x = 0; x < 64; x++) source.bytes[y * 64 + x] = 40 + 2 * x + y;
    const size = fc.constantFrom(8, 16, 48);
    const part = fc.record({
      x: fc.double({ min: 4, max: 20, noNaN: true }),
      y: fc.double({ min: 4, max: 8, noNaN: true }),
      width: fc.double({ min: 6, max: 36, noNaN: true }),
      height: fc.double({ min: 6, max: 18, noNaN: true }),
    });
    fc.assert(
      fc.property(part, size, size, (crop, width, height) => {
        const shown = resample(source, crop, width, height);
        for (let y = 0; y < height; y++)
          for (let x = 0; x < width; x++) {
            const across = crop.x + ((x + 0.5) * crop.width) / width - 0.5;
            const down = crop.y + ((y + 0.5) * crop.height) / height - 0.5;
            // rounded, and what a pixel covers is not quite even about its middle
            const off = Math.abs((shown.bytes[y * width + x] ?? 0) - (40 + 2 * across + down));
            if (off > 1.2) throw new Error(`${off} at ${x}, ${y}`);
          }
        expect(shown.bytes.subarray(width * height).every((each) => each === 128)).toBe(true);
      }),
      { numRuns: 60 },
    );
    const whole = { x: 0, y: 0, width: 64, height: 32 };
    expect(resample(source, whole, 64, 32).bytes).toEqual(source.bytes);
  });
});
