import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bridgeMotion, type TimedPlace } from '#core/follow/bridge-motion';
import { skinContrast } from '#core/follow/skin-contrast';

const loose = { speed: 2000, acceleration: 1e5 };
const places = (of: (time: number) => { x: number; y: number }, frames: readonly number[]): TimedPlace[] =>
  frames.map((frame) => ({ time: frame / 60, at: of(frame / 60), variance: 0.01 }));

it('carries a steadily hurried point on, and on to its next mark', () => {
  const way = (t: number) => ({ x: 40 + 300 * t - 900 * t * t, y: 10 + 80 * t + 2000 * t * t });
  const before = places(way, [0, 1, 2, 3, 4]);
  for (const after of [[], places(way, [9]), places(way, [9, 15])]) {
    const next = bridgeMotion(5 / 60, before, after, 50_000, loose);
    expect(next?.at.x).toBeCloseTo(way(5 / 60).x, 0);
    expect(next?.at.y).toBeCloseTo(way(5 / 60).y, 0);
  }
});

it('says the same whichever way time runs', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 4, maxLength: 8 }),
      (x) => {
        const seen = x.map(
          (value, i): TimedPlace => ({ time: i / 60, at: { x: value, y: -value }, variance: 4 }),
        );
        const back = seen.map((each) => ({ ...each, time: -each.time })).reverse();
        const at = 2.5 / 60;
        const there = bridgeMotion(at, seen.slice(0, 3), seen.slice(3), 30_000, loose);
        const again = bridgeMotion(-at, back.slice(0, -3), back.slice(-3), 30_000, loose);
        expect(again?.at.x).toBeCloseTo(there?.at.x ?? Number.NaN, 3);
        expect(again?.at.y).toBeCloseTo(there?.at.y ?? Number.NaN, 3);
        expect(again?.variance).toBeCloseTo(there?.variance ?? Number.NaN, 3);
      },
    ),
  );
});

it('is surer of a place with a mark beyond than without, and knows nothing of nothing', () => {
  const still = places(() => ({ x: 5, y: 5 }), [0, 1, 2]);
  const open = bridgeMotion(0.2, still, [], 30_000, loose);
  const held = bridgeMotion(
    0.2,
    still,
    places(() => ({ x: 5, y: 5 }), [15]),
    30_000,
    loose,
  );
  expect(held?.variance).toBeLessThan(0.2 * (open?.variance ?? 0));
  expect(bridgeMotion(0, [], [], 1, loose)).toBeNull();
});

it('sees skin as brighter than water of the same brightness, and stays within a byte', () => {
  expect(skinContrast(128, 128)).toBe(128);
  expect(skinContrast(140, 150)).toBeGreaterThan(skinContrast(140, 110) + 50);
  expect(skinContrast(255, 255)).toBe(255);
  expect(skinContrast(0, 0)).toBe(0);
});
