import { describe, expect, it } from 'vitest';
import { canHalve, halvePlanes } from '../../../renderer/video/halve-planes';

/** Park–Miller bytes. */
function noise(count: number): Uint8Array {
  let state = 41_017;
  return Uint8Array.from({ length: count }, () => {
    state = (state * 48_271) % 2_147_483_647;
    return state & 255;
  });
}

const i420 = (width: number, height: number): PlaneLayout[] => [
  { offset: 0, stride: width },
  { offset: width * height, stride: width / 2 },
  { offset: (width * height * 5) / 4, stride: width / 2 },
];

/** The mean of four neighbours, written as plainly as can be. */
function mean(from: Uint8Array, plane: PlaneLayout, x: number, y: number, step: number): number {
  const at = (dx: number, dy: number): number =>
    from[plane.offset + (2 * y + dy) * plane.stride + (2 * Math.floor(x / step) + dx) * step + (x % step)] ??
    Number.NaN;
  return Math.floor((at(0, 0) + at(1, 0) + at(0, 1) + at(1, 1) + 2) / 4);
}

describe('a picture at half size', () => {
  it.each([
    ['I420', 64, 32],
    ['I420', 12, 8],
    ['NV12', 64, 32],
  ] as const)('%s of %i × %i: every value is the mean of its four, rounded', (format, width, height) => {
    const bytes = noise((width * height * 3) / 2);
    const layout =
      format === 'I420'
        ? i420(width, height)
        : [
            { offset: 0, stride: width },
            { offset: width * height, stride: width },
          ];
    const half = halvePlanes(format, bytes, layout, width, height);
    expect([half.width, half.height, half.bytes.length]).toEqual([width / 2, height / 2, bytes.length / 4]);
    layout.forEach((plane, n) => {
      const out = half.layout[n] ?? { offset: -1, stride: 0 };
      const step = n > 0 && format === 'NV12' ? 2 : 1;
      const rows = n === 0 ? height / 2 : height / 4;
      for (let y = 0; y < rows; y++)
        for (let x = 0; x < out.stride; x++)
          expect(half.bytes[out.offset + y * out.stride + x]).toBe(mean(bytes, plane, x, y, step));
    });
  });

  it('stays as it is where it is all one value, black and white too', () => {
    for (const value of [0, 1, 128, 254, 255]) {
      const { bytes } = halvePlanes('I420', new Uint8Array(32 * 16 * 1.5).fill(value), i420(32, 16), 32, 16);
      expect(new Set(bytes)).toEqual(new Set([value]));
    }
  });

  it('is made only where no edge would be lost and the layout is known', () => {
    expect(canHalve('I420', 1920, 1080)).toBe(true);
    expect(canHalve('NV12', 3840, 2160)).toBe(true);
    expect(canHalve('I420', 854, 480)).toBe(false);
    expect(canHalve('I420', 1920, 1082)).toBe(false);
    expect(canHalve('I422', 1920, 1080)).toBe(false);
    expect(canHalve(null, 1920, 1080)).toBe(false);
  });
});
