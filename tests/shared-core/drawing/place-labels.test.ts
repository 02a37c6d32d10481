import { describe, expect, it } from 'vitest';
import { placeLabels } from '#core/drawing/place-labels';

const box = (x: number, y: number) => ({ at: { x, y }, width: 60, height: 20 });
const covers = (centre: { x: number; y: number }, point: { x: number; y: number }): boolean =>
  Math.abs(centre.x - point.x) < 30 && Math.abs(centre.y - point.y) < 10;

describe('labels beside landmarks', () => {
  it('lie above a point with nothing around it', () => {
    expect(placeLabels([box(100, 100)], [{ x: 100, y: 100 }], 10)).toEqual([{ x: 100, y: 80 }]);
  });

  it('never cover a landmark of a body laid out in a line, nor each other', () => {
    const points = [0, 50, 100, 150, 200].map((x, index) => ({ x, y: 100 + (index % 2) * 15 }));
    const centres = placeLabels(
      points.map(({ x, y }) => box(x, y)),
      points,
      10,
    );
    for (const centre of centres) for (const point of points) expect(covers(centre, point)).toBe(false);
    centres.forEach((one, index) => {
      for (const other of centres.slice(index + 1))
        expect(Math.abs(one.x - other.x) >= 60 || Math.abs(one.y - other.y) >= 20).toBe(true);
    });
  });
});
