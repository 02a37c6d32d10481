import { describe, expect, it } from 'vitest';
import { offPlaneError } from '#core/scene/off-plane';
import { poolMarkById, poolMarks } from '#core/scene/pool-marks';
import { poolTransform, toPool } from '#core/scene/pool-transform';
import { scaleUncertainty } from '#core/scene/scale-uncertainty';
import { assumedTiltSd, sceneTilt, tiltVariance } from '#core/scene/scene-tilt';
import { heightAboveSurface } from '#core/scene/surface-line';
import { emptyScene, type Scene } from '#core/swim-file/swim-schema';

const scale = {
  line: { a: { x: 100, y: 50 }, b: { x: 400, y: 450 } },
  metres: 2.5,
  metresSd: 0.05,
  preset: null,
  frame: 0,
};
const bare: Scene = emptyScene;

describe('picture to pool', () => {
  it('turns y up, keeps x along travel and names its unit', () => {
    expect(poolTransform(bare, null)).toMatchObject({ unit: 'px', perPixel: 1, travelKnown: false });
    expect(poolTransform(bare, 800)).toMatchObject({ unit: 'L', perPixel: 1 / 800 });
    // 300 by 400 pixels: 500 pixels are 2.5 m
    const left = poolTransform({ ...bare, travel: 'left', scale }, 800);
    expect(left).toMatchObject({ unit: 'm', direction: -1, travelKnown: true });
    const p = toPool(left, { x: 200, y: 100 });
    expect(p.x).toBeCloseTo(-1, 12);
    expect(p.y).toBeCloseTo(-0.5, 12);
  });

  it('takes the tilt out, whichever end of the line was laid first', () => {
    const a = { x: 0, y: 0 };
    const b = { x: 400, y: 300 };
    for (const level of [
      { a, b },
      { a: b, b: a },
    ]) {
      const transform = poolTransform({ ...bare, level }, null);
      const from = toPool(transform, a);
      const to = toPool(transform, b);
      expect(to.y - from.y).toBeCloseTo(0, 10);
      expect(to.x - from.x).toBeCloseTo(500, 10);
    }
  });

  it('falls back on the surface for level, then on an assumed level', () => {
    const surface = { a: { x: 0, y: 10 }, b: { x: 100, y: 10 } };
    expect(sceneTilt({ level: null, surface }).from).toBe('surface');
    const assumed = sceneTilt(bare);
    expect(assumed.from).toBe('assumed');
    expect(tiltVariance(assumed, 2)).toBe(assumedTiltSd ** 2);
    expect(tiltVariance(sceneTilt({ level: null, surface }), 2)).toBeCloseTo(8 / 10_000, 15);
    const point = { a: { x: 5, y: 5 }, b: { x: 5, y: 5 } };
    expect(sceneTilt({ level: point, surface: null }).from).toBe('assumed');
  });

  it('has no scale where the known length has none', () => {
    const nothing = { ...scale, line: { a: { x: 5, y: 5 }, b: { x: 5, y: 5 } } };
    expect(poolTransform({ ...bare, scale: nothing }, null).unit).toBe('px');
    expect(scaleUncertainty({ scale: nothing }, 2)).toBeNull();
  });
});

describe('water surface', () => {
  it('measures square to the line: above is positive', () => {
    const surface = { a: { x: 0, y: 100 }, b: { x: 1000, y: 100 } };
    expect(heightAboveSurface({ surface }, { x: 250, y: 40 })?.pixels).toBeCloseTo(60, 10);
    expect(heightAboveSurface({ surface }, { x: 250, y: 400 })?.pixels).toBeCloseTo(-300, 10);
    const turned = { a: surface.b, b: surface.a };
    const height = heightAboveSurface({ surface: turned }, { x: 250, y: 400 });
    expect(height?.pixels).toBeCloseTo(-300, 10);
    expect(height?.weightA).toBeCloseTo(0.25, 10);
    expect(height?.weightB).toBeCloseTo(0.75, 10);
  });
  it('is null for an upright line and for none', () => {
    expect(heightAboveSurface(bare, { x: 0, y: 0 })).toBeNull();
    const surface = { a: { x: 5, y: 0 }, b: { x: 5, y: 9 } };
    expect(heightAboveSurface({ surface }, { x: 0, y: 0 })).toBeNull();
  });
});

describe('scale uncertainty', () => {
  it('keeps ends, length and plane apart, and shared from own', () => {
    const u = scaleUncertainty({ scale }, 2);
    expect(u?.endPoints).toBeCloseTo(8 / 250_000, 15);
    expect(u?.length).toBeCloseTo(0.0004, 15);
    expect(u?.offPlane).toBeCloseTo(0.0001, 15);
    expect(u?.shared).toBeCloseTo(8 / 250_000 + 0.0004, 15);
    expect(u?.own).toBeCloseTo(0.0001, 15);
  });
});

describe('optics', () => {
  // check values computed from the stated formulas
  it('tells how much the swimmer off the plane is misread', () => {
    expect(100 * offPlaneError(6, 6.3)).toBeCloseTo(-4.76, 2);
    expect(100 * offPlaneError(6, 5.7)).toBeCloseTo(5.26, 2);
    // the lane rope stands 1.25 m nearer than a swimmer at 5 m
    expect(100 * offPlaneError(5, 3.75)).toBeCloseTo(33.3, 1);
    expect(() => offPlaneError(0, 3)).toThrow(RangeError);
  });
});

describe('pool marks', () => {
  it('fit together: floor line and its two ends make the pool', () => {
    const metres = (id: string): number => poolMarkById(id)?.metres ?? Number.NaN;
    expect(metres('floor-line-50') + 2 * metres('floor-line-end')).toBe(50);
    expect(metres('floor-line-25') + 2 * metres('floor-line-end')).toBe(25);
    expect(metres('pool-25-yards')).toBeCloseTo(25 * 0.9144, 12);
  });
  it('each say where the figure comes from and are never taken as exact', () => {
    expect(new Set(poolMarks.map((m) => m.id)).size).toBe(poolMarks.length);
    for (const mark of poolMarks) {
      expect(mark.source.length).toBeGreaterThan(10);
      expect(mark.metresSd).toBeGreaterThan(0);
    }
    expect(poolMarkById('no-such-mark')).toBeNull();
  });
});
