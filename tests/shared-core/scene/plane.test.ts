import { describe, expect, it } from 'vitest';
import { applyHomography, homographyFromPoints } from '#core/scene/homography';
import { distortionFromLines } from '#core/scene/plumb-lines';
import { distortPoint, straightenPoint } from '#core/scene/radial-distortion';
import type { Point } from '#core/units/point';
import reference from '../../reference/plane_scale.json';

const points = (pairs: readonly (readonly number[])[]): Point[] =>
  pairs.map(([x, y]) => ({ x: x ?? Number.NaN, y: y ?? Number.NaN }));

describe('plane scale from point pairs', () => {
  it('agrees with an independent implementation, exactly for four corners and closely for many noisy points', () => {
    for (const { from, to, h, probe, carried, exact } of reference.homographies) {
      const found = homographyFromPoints(points(from), points(to));
      expect(found).not.toBeNull();
      if (!found) return;
      if (exact) {
        // the other one works on corners rounded to single precision
        h.forEach((v, i) => {
          expect(Math.abs((found[i] ?? Number.NaN) - v)).toBeLessThan(1e-6 * Math.max(1, Math.abs(v)));
        });
      }
      // the other one polishes the geometric error of noisy points: under 1 cm apart on a 5 m plane
      points(probe).forEach((p, i) => {
        const here = applyHomography(found, p);
        const [x, y] = carried[i] ?? [];
        expect(Math.hypot((here?.x ?? 9) - (x ?? 0), (here?.y ?? 9) - (y ?? 0))).toBeLessThan(
          exact ? 1e-5 : 0.01,
        );
      });
    }
  });

  it('carries corners to corners and back', () => {
    const corners = points([
      [0, 0],
      [100, 5],
      [95, 60],
      [-3, 55],
    ]);
    const rectangle = points([
      [0, 0],
      [5, 0],
      [5, 2.5],
      [0, 2.5],
    ]);
    const there = homographyFromPoints(corners, rectangle);
    const back = homographyFromPoints(rectangle, corners);
    expect(there && back).not.toBeNull();
    if (!there || !back) return;
    for (const p of points([
      [50, 30],
      [10, 50],
    ])) {
      const q = applyHomography(there, p);
      const r = q && applyHomography(back, q);
      expect(r?.x).toBeCloseTo(p.x, 8);
      expect(r?.y).toBeCloseTo(p.y, 8);
    }
  });

  it('is null for points that fix no plane', () => {
    const line = points([
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
    ]);
    const square = points([
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ]);
    expect(homographyFromPoints(line, square)).toBeNull();
    expect(homographyFromPoints(square, line)).toBeNull();
    expect(homographyFromPoints(square.slice(0, 3), square.slice(0, 3))).toBeNull();
    const one = points([
      [2, 2],
      [2, 2],
      [2, 2],
      [2, 2],
    ]);
    expect(homographyFromPoints(one, square)).toBeNull();
    const threeOnALine = points([
      [0, 0],
      [1, 0],
      [2, 0],
      [0, 1],
    ]);
    expect(homographyFromPoints(threeOnALine, square)).toBeNull();
  });
});

describe('radial distortion', () => {
  it('bends and straightens as an independent implementation does', () => {
    for (const { k1, k2, reach, centre, straight, bent } of reference.lenses) {
      const lens = { k1, k2, reach, centre: { x: centre[0] ?? 0, y: centre[1] ?? 0 } };
      const expected = points(bent);
      points(straight).forEach((p, i) => {
        const q = distortPoint(lens, p);
        expect(q.x).toBeCloseTo(expected[i]?.x ?? Number.NaN, 7);
        expect(q.y).toBeCloseTo(expected[i]?.y ?? Number.NaN, 7);
        const back = straightenPoint(lens, q);
        expect(back?.x).toBeCloseTo(p.x, 7);
        expect(back?.y).toBeCloseTo(p.y, 7);
      });
    }
  });

  it('recovers k1 and k2 from lines that an independent implementation has bent', () => {
    for (const { k1, k2, reach, centre, lines } of reference.lenses) {
      const fit = distortionFromLines(lines.map(points), { x: centre[0] ?? 0, y: centre[1] ?? 0 }, reach);
      expect(fit).not.toBeNull();
      expect(fit?.lens.k1).toBeCloseTo(k1, 5);
      expect(fit?.lens.k2).toBeCloseTo(k2, 5);
      expect(fit?.residual).toBeLessThan(1e-5);
    }
  });

  it('is null for lines that cannot tell, and for too few points', () => {
    const through = [
      points([
        [-100, 0],
        [0, 0],
        [60, 0],
        [100, 0],
      ]),
      points([
        [0, -100],
        [0, 20],
        [0, 60],
        [0, 90],
      ]),
    ];
    expect(distortionFromLines(through, { x: 0, y: 0 }, 100)).toBeNull();
    expect(
      distortionFromLines(
        [
          points([
            [0, 1],
            [1, 1],
          ]),
        ],
        { x: 0, y: 0 },
        100,
      ),
    ).toBeNull();
  });

  it('is null where the lens folds over', () => {
    const lens = { k1: -0.4, k2: 0, reach: 100, centre: { x: 0, y: 0 } };
    expect(straightenPoint(lens, { x: 90, y: 0 })).toBeNull();
    expect(straightenPoint(lens, { x: 0, y: 0 })).toEqual({ x: 0, y: 0 });
  });
});
