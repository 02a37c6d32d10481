import { describe, expect, it } from 'vitest';
import type { BodySighting, LandmarkSighting } from '#core/see/body-sighting';
import { layStretches, type SeenPoints } from '#core/see/lay-seen';
import { lengthOfSeen, seenByFrame } from '#core/follow/seen-points';
import { seenRuns, travelOfSeen } from '#core/see/seen-runs';
import { withSeen } from '#core/see/with-seen';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { Point } from '#core/units/point';
import { normal, seeded } from '../../../sample-clips/model/seeded';

/** Fingertip to toe, pixels. */
const length = 400;
/** Along the body from the fingertip, shares of its length. */
const along: Readonly<Record<LandmarkName, number>> = {
  ...{ fingertip: 0, wrist: 0.078, elbow: 0.188, shoulder: 0.313, ear: 0.28, hip: 0.538 },
  ...{ knee: 0.723, ankle: 0.903, toe: 1 },
};

/** A body going right with a wave of 2 Hz running down it, larger toward the toe. */
function trueBody(time: number): Readonly<Record<LandmarkName, Point>> {
  const at = (name: LandmarkName): Point => {
    const share = along[name];
    return {
      x: 600 + 100 * time - length * share,
      y: 300 + length * 0.09 * share ** 2 * Math.sin(2 * Math.PI * (2 * time - share)),
    };
  };
  return Object.fromEntries(landmarkNames.map((name) => [name, at(name)])) as Record<LandmarkName, Point>;
}

function sighting(time: number, random: () => number, strange: boolean): BodySighting {
  const body = trueBody(time);
  const seen = (name: LandmarkName, off = 0): LandmarkSighting => ({
    at: { x: body[name].x + 5 * normal(random), y: body[name].y + 5 * normal(random) + off },
    apart: 4,
    visible: 0.9,
  });
  const end = (name: 'fingertip' | 'toe'): Point => seen(name).at;
  return {
    sure: 0.99,
    landmarks: {
      wrist: seen('wrist'),
      elbow: seen('elbow'),
      shoulder: seen('shoulder'),
      ear: seen('ear'),
      hip: seen('hip'),
      // now and then another limb is taken for it
      knee: seen('knee', strange ? 80 : 0),
      ankle: seen('ankle'),
    },
    indexBase: seen('wrist'),
    toeBase: seen('ankle'),
    handEnd: end('fingertip'),
    footEnd: strange ? null : end('toe'),
  };
}

const random = seeded(5);
const times = Array.from({ length: 200 }, (_, i) => i / 60 + (i >= 120 ? 0.6 : 0));
const seen = times.map((time, i) => ({ time, body: sighting(time, random, i % 23 === 11) }));
const laid = layStretches(seen);

const rms = (pick: (i: number) => { readonly is: Point; readonly at: Point }): number =>
  Math.sqrt(
    times.reduce((sum, _, i) => {
      const { is, at } = pick(i);
      return sum + (is.x - at.x) ** 2 + (is.y - at.y) ** 2;
    }, 0) / times.length,
  );

describe('laying what was seen', () => {
  it('comes nearer to the truth than what is seen, and is not drawn off by another limb', () => {
    expect(laid).toHaveLength(times.length);
    for (const name of ['hip', 'knee', 'ankle', 'toe'] as const) {
      const own = rms((i) => ({ is: laid[i]?.[name] ?? { x: 0, y: 0 }, at: trueBody(times[i] ?? 0)[name] }));
      // 7.1 pixels of noise go in, and a knee 80 pixels off on every 23rd picture
      expect(own, name).toBeLessThan(5.6);
    }
  });

  it('keeps the height of the kick', () => {
    const heights = (of: (i: number) => number): number => {
      const first = times.map((_, i) => i).filter((i) => i > 10 && i < 110);
      const [sine, cosine] = [Math.sin, Math.cos].map(
        (wave) =>
          first.reduce((sum, i) => sum + of(i) * wave(4 * Math.PI * (times[i] ?? 0)), 0) / first.length,
      );
      return Math.hypot(sine ?? 0, cosine ?? 0);
    };
    const is = heights((i) => (laid[i]?.toe.y ?? 0) - 300);
    const should = heights((i) => trueBody(times[i] ?? 0).toe.y - 300);
    expect(Math.abs(is / should - 1)).toBeLessThan(0.04);
  });

  it('says how far points may be off: more where laying moved them far', () => {
    const usual = laid[45]?.knee.sd ?? 0;
    const strange = laid[57]?.knee.sd ?? 0;
    expect(usual).toBeGreaterThan(0.009 * length);
    expect(strange).toBeGreaterThan(2 * usual);
  });

  it('lays nothing of nothing', () => {
    expect(layStretches([])).toEqual([]);
  });
});

describe('how seen points are kept', () => {
  // the second stretch begins 36 pictures later
  const frames = laid.map((points: SeenPoints, i) => ({ frame: i < 120 ? i : i + 36, points }));
  const runs = seenRuns(frames);

  it('is a run for each landmark and stretch, to a tenth of a pixel, with a spread that is never nothing', () => {
    expect(runs).toHaveLength(2 * landmarkNames.length);
    expect(
      runs.filter(({ landmark }) => landmark === 'hip').map(({ frame, points }) => [frame, points.length]),
    ).toEqual([
      [0, 120],
      [156, 80],
    ]);
    const hip = seenByFrame(runs).get(170)?.get('hip');
    expect(hip?.x).toBeCloseTo(laid[134]?.hip.x ?? 0, 0);
    expect(Math.min(...runs.flatMap(({ points }) => points.map(([, , sd]) => sd)))).toBeGreaterThanOrEqual(
      0.1,
    );
  });

  it('tells how long the body is and which way it goes', () => {
    expect(Math.abs((lengthOfSeen(runs) ?? 0) / length - 1)).toBeLessThan(0.05);
    expect(travelOfSeen(runs)).toBe('right');
    const mirrored = runs.map((run) => ({
      ...run,
      points: run.points.map(([x, y, sd]): [number, number, number] => [1000 - x, y, sd]),
    }));
    expect(travelOfSeen(mirrored)).toBe('left');
    const standing = runs.map((run) => ({
      ...run,
      points: run.points.map(([x, y, sd]): [number, number, number] => [y, x, sd]),
    }));
    expect(travelOfSeen(standing)).toBeNull();
    expect([lengthOfSeen([]), travelOfSeen([])]).toEqual([null, null]);
  });

  it('gives way to a marked or followed point of the same frame', () => {
    const known = [{ frame: 3, points: { hip: { x: 1, y: 2 } } }];
    const all = withSeen(known, runs, 'hip');
    expect(all).toHaveLength(200);
    expect(all[3]).toBe(known[0]);
    expect(withSeen(known, [], 'hip')).toBe(known);
  });
});
