import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { LandmarkName } from '#core/marks/landmark';
import { predictBody } from '#core/follow/predict-body';
import { skinContrast } from '#core/follow/skin-contrast';

it('lets an arm that swings go on swinging: the next place on the circle, not on its tangent', () => {
  const arm = (angle: number) =>
    new Map([
      ['shoulder' as const, { x: 100, y: 100 }],
      ['elbow' as const, { x: 100 + 50 * Math.cos(angle), y: 100 + 50 * Math.sin(angle) }],
      ['wrist' as const, { x: 100 + 90 * Math.cos(angle), y: 100 + 90 * Math.sin(angle) }],
    ]);
  const next = predictBody(arm(0.4), arm(0.7));
  for (const [name, { x, y }] of arm(1.0)) {
    expect(next.get(name)?.x).toBeCloseTo(x, 9);
    expect(next.get(name)?.y).toBeCloseTo(y, 9);
  }
});

it('carries a body that only moves straight on straight on', () => {
  fc.assert(
    fc.property(fc.integer({ min: -30, max: 30 }), fc.integer({ min: -30, max: 30 }), (dx, dy) => {
      const leg = (k: number) =>
        new Map<LandmarkName, { x: number; y: number }>([
          ['hip', { x: 10 + k * dx, y: 20 + k * dy }],
          ['knee', { x: 60 + k * dx, y: 25 + k * dy }],
          ['ankle', { x: 100 + k * dx, y: 15 + k * dy }],
        ]);
      for (const [name, { x, y }] of predictBody(leg(0), leg(1))) {
        expect(x).toBeCloseTo(leg(2).get(name)?.x ?? Number.NaN, 6);
        expect(y).toBeCloseTo(leg(2).get(name)?.y ?? Number.NaN, 6);
      }
    }),
  );
});

it('sees skin as brighter than water of the same brightness, and stays within a byte', () => {
  expect(skinContrast(128, 128)).toBe(128);
  expect(skinContrast(140, 150)).toBeGreaterThan(skinContrast(140, 110) + 50);
  expect(skinContrast(255, 255)).toBe(255);
  expect(skinContrast(0, 0)).toBe(0);
});
