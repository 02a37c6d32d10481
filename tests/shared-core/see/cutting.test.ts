import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutSquare, type SeenPicture } from '#core/see/cut-square';
import { lookWindows } from '#core/see/look-windows';
import { fromSquare, intoSquare, squareOf, squaresMeet } from '#core/see/square';

/** Red grows across, green grows down, by one a pixel of the picture. */
function ramp(width: number, height: number, step = 1): SeenPicture {
  const rgba = new Uint8Array(4 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rgba.set([x, y, 200, 255], 4 * (y * width + x));
  return { width, height, rgba, step };
}

describe('a turned square', () => {
  it('takes a point into itself and back', () => {
    const number = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        number,
        number,
        number,
        number,
        fc.double({ min: -7, max: 7, noNaN: true }),
        (x, y, px, py, angle) => {
          const square = { x, y, side: 180, angle };
          const { u, v } = intoSquare(square, { x: px, y: py });
          const back = fromSquare(square, u, v);
          expect(back.x).toBeCloseTo(px, 6);
          expect(back.y).toBeCloseTo(py, 6);
        },
      ),
    );
  });

  it('points up from the hips to where the body reaches, with a quarter of room', () => {
    const square = squareOf({ x: 100, y: 50 }, { x: 180, y: 50 });
    expect(square.side).toBeCloseTo(200);
    // the body goes right in the picture: right in the picture is up in the square
    const top = fromSquare(square, 0.5, 0);
    expect(top.x).toBeCloseTo(200);
    expect(top.y).toBeCloseTo(50);
  });

  it('meets another by how near their middles are', () => {
    const a = { x: 0, y: 0, side: 100, angle: 0 };
    expect(squaresMeet(a, a)).toBe(1);
    expect(squaresMeet(a, { ...a, x: 60 })).toBe(0);
    expect(squaresMeet(a, { ...a, x: 25 })).toBeCloseTo(0.5);
  });
});

describe('cutting a square', () => {
  it('gives each place the picture’s own value, whatever the turn and size', () => {
    const picture = ramp(200, 160);
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.integer({ min: 20, max: 90 }),
        (angle, side) => {
          const square = { x: 100, y: 80, side, angle };
          const cut = cutSquare(picture, square, 16, 0, 1);
          for (const [row, column] of [
            [0, 0],
            [3, 12],
            [15, 15],
          ] as const) {
            const { x, y } = fromSquare(square, (column + 0.5) / 16, (row + 0.5) / 16);
            const at = 3 * (row * 16 + column);
            // a pixel's value stands at its middle
            expect(255 * (cut[at] ?? 0)).toBeCloseTo(x - 0.5, 3);
            expect(255 * (cut[at + 1] ?? 0)).toBeCloseTo(y - 0.5, 3);
            expect(255 * (cut[at + 2] ?? 0)).toBeCloseTo(200, 3);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is black outside the picture, in the network’s own range', () => {
    const cut = cutSquare(ramp(40, 40), { x: 0, y: 20, side: 40, angle: 0 }, 8, -1, 1);
    expect(cut[0]).toBe(-1);
    expect(cut[3 * 7 + 2]).toBeCloseTo((2 * 200) / 255 - 1, 3);
  });

  it('counts in pixels of the shown picture where the picture given is smaller', () => {
    const cut = cutSquare(ramp(100, 80, 2), { x: 100, y: 80, side: 60, angle: 0 }, 10, 0, 1);
    // the middle of the shown picture is pixel 50 of the smaller one
    expect(255 * (cut[3 * (5 * 10 + 5)] ?? 0)).toBeCloseTo((100 + 3) / 2 - 0.5, 3);
  });
});

it('windows cover the whole picture and lie inside it, upright or not', () => {
  for (const [width, height] of [
    [1280, 720],
    [720, 1280],
    [400, 400],
  ] as const) {
    const [whole, ...windows] = lookWindows(width, height);
    expect(whole?.side).toBe(Math.max(width, height));
    for (const { x, y, side } of windows) {
      expect(x - side / 2).toBeGreaterThanOrEqual(-1e-9);
      expect(y - side / 2).toBeGreaterThanOrEqual(-1e-9);
      expect(x + side / 2).toBeLessThanOrEqual(width + 1e-9);
      expect(y + side / 2).toBeLessThanOrEqual(height + 1e-9);
    }
    // a body of a third of the width lies whole in some window
    const body = width / 3;
    for (let left = 0; left + body <= width; left += 7)
      expect(
        windows.some(({ x, side }) => x - side / 2 <= left + 1e-9 && left + body <= x + side / 2 + 1e-9),
      ).toBe(true);
  }
});
