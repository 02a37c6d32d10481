import { describe, expect, it, vi } from 'vitest';
import { packColour, unpackColour } from '#core/follow/packed-colour';
import { colourPlanes, coloursByDrawing, coloursOfPlanes } from '../../../renderer/video/colour-part';

const [width, height] = [12, 8];
/** Every pixel its own brightness, every two by two of them their own colours. */
const bright = (x: number, y: number): number => 16 + 2 * (x + width * y);
const blue = (x: number, y: number): number => 20 + 8 * ((x >> 1) + 6 * (y >> 1));
const red = (x: number, y: number): number => 235 - blue(x, y);

/** A picture in one of the decoders' layouts, each row longer than the picture and the planes not one after the other. */
function picture(format: 'NV12' | 'I420' | 'I422' | 'I444') {
  const bytes = new Uint8Array(2048).fill(255);
  const plane = (
    offset: number,
    stride: number,
    every: readonly [across: number, down: number],
    values: readonly ((x: number, y: number) => number)[],
  ): PlaneLayout => {
    for (let y = 0; y < height; y += every[1])
      for (let x = 0; x < width; x += every[0])
        values.forEach((value, i) => {
          bytes[offset + (y / every[1]) * stride + (values.length * x) / every[0] + i] = value(x, y);
        });
    return { offset, stride };
  };
  const first = plane(3, 17, [1, 1], [bright]);
  if (format === 'NV12') return colourPlanes(format, bytes, [first, plane(500, 15, [2, 2], [blue, red])]);
  const every = { I420: [2, 2], I422: [2, 1], I444: [1, 1] } as const;
  // redness before blueness in memory: only the layout says where they lie
  return colourPlanes(format, bytes, [
    first,
    plane(1000, 16, every[format], [blue]),
    plane(500, 19, every[format], [red]),
  ]);
}

describe('the colours of a part of a picture', () => {
  const part = { x: 3, y: 1, width: 7, height: 5 };
  it.each(['NV12', 'I420', 'I422', 'I444'] as const)(
    'are those of its pixels from %s planes, on odd places too',
    (format) => {
      const planes = picture(format);
      if (!planes) throw new Error('no planes');
      for (const every of [1, 2] as const) {
        const expected: number[] = [];
        for (let y = 0; y + every <= part.height; y += every)
          for (let x = 0; x + every <= part.width; x += every)
            expected.push(
              packColour(
                bright(part.x + x, part.y + y),
                blue(part.x + x, part.y + y),
                red(part.x + x, part.y + y),
              ),
            );
        expect([...coloursOfPlanes(planes, part, every)]).toEqual(expected);
      }
    },
  );

  it('are those of HD film when the picture has to be drawn', () => {
    // red, green and blue drawn; brightness, blueness and redness by the weights of ITU-R BT.709, stored as 16 to 235 and 16 to 240
    const bars = [
      [255, 255, 255, 235, 128, 128],
      [0, 0, 0, 16, 128, 128],
      [255, 0, 0, 63, 102, 240],
      [0, 255, 0, 173, 42, 26],
      [0, 0, 255, 32, 240, 118],
    ] as const;
    const data = Uint8ClampedArray.from(bars.flatMap(([r, g, b]) => [r, g, b, 255]));
    const drawn: number[][] = [];
    vi.stubGlobal(
      'OffscreenCanvas',
      class {
        getContext = () => ({ getImageData: () => ({ data }) });
      },
    );
    const seen = coloursByDrawing(
      (_, ...place) => void drawn.push(place as number[]),
      { width: 40, height: 20 },
      { x: 6, y: 4, width: 2 * bars.length, height: 2 },
      2,
    );
    vi.unstubAllGlobals();
    // the part's corner comes to lie in the corner of the sheet, all at half the size
    expect(drawn).toEqual([[-3, -2, 20, 10]]);
    bars.forEach(([, , , y, cb, cr], i) => {
      const { brightness, blueness, redness } = unpackColour(seen[i] ?? 0);
      // within what a packed colour leaves open
      expect(Math.abs(brightness - y)).toBeLessThanOrEqual(8.5);
      expect(Math.abs(blueness - cb)).toBeLessThanOrEqual(2.5);
      expect(Math.abs(redness - cr)).toBeLessThanOrEqual(2.5);
    });
  });

  it('are not told from layouts with deep colours or none', () => {
    const bytes = new Uint8Array(8);
    const plane = { offset: 0, stride: 2 };
    for (const format of ['RGBA', 'I420P10', null] as (VideoPixelFormat | null)[])
      expect(colourPlanes(format, bytes, [plane, plane, plane])).toBeNull();
    expect(colourPlanes('NV12', bytes, [plane])).toBeNull();
    expect(colourPlanes('I420', bytes, [plane, plane])).toBeNull();
  });
});
