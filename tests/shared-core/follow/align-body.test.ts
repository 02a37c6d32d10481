import { expect, it } from 'vitest';
import { alignBody } from '#core/follow/align-body';
import { greyPyramid } from '#core/follow/grey-pyramid';
import { layTogether, type StretchPicture } from '#core/follow/lay-together';
import { limbs } from '#core/follow/limb';
import { limbTemplate } from '#core/follow/limb-template';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/point';
import { bodyLength, drawLeg, leg, turned } from './drawn-leg';

it.each([
  ['moved', (p: Point) => ({ x: p.x + 5.3, y: p.y - 3.7 })],
  ['turned', (p: Point) => turned(leg.knee, p, 0.05)],
  ['moved and turned', (p: Point) => turned(leg.knee, { x: p.x + 4, y: p.y + 2.5 }, -0.04)],
] as const)('finds a leg that has %s to a fraction of a pixel', (_, move) => {
  const marked = greyPyramid(240, 160, drawLeg(leg.knee, leg.ankle, leg.toe), 3);
  const own = limbs.filter(({ from }) => from === 'knee' || from === 'ankle');
  const templates = own.flatMap((limb) => {
    const template = limbTemplate(marked, limb, leg[limb.from as 'knee'], leg[limb.to as 'toe'], bodyLength);
    return template ? [{ template, weight: 1 }] : [];
  });
  expect(templates).toHaveLength(2);
  const now = { knee: move(leg.knee), ankle: move(leg.ankle), toe: move(leg.toe) };
  const pyramid = greyPyramid(240, 160, drawLeg(now.knee, now.ankle, now.toe), 3);
  const expected = new Map(
    (['knee', 'ankle', 'toe'] as const).map((name): [LandmarkName, { at: Point; sd: number }] => [
      name,
      { at: leg[name], sd: 8 },
    ]),
  );
  const lengths = own.map(({ from, to }) => {
    const [a, b] = [leg[from as 'knee'], leg[to as 'toe']];
    const length = Math.hypot(a.x - b.x, a.y - b.y);
    return { from, to, length, sd: 1, most: 1.02 * length, mostSd: 1 };
  });
  const found = alignBody(pyramid, templates, expected, lengths);
  for (const name of ['knee', 'ankle', 'toe'] as const) {
    const at = found.points.get(name);
    expect(Math.hypot((at?.x ?? 0) - now[name].x, (at?.y ?? 0) - now[name].y)).toBeLessThan(0.8);
  }
});

it('stays where it is expected when there is nothing to see', () => {
  const flat = greyPyramid(100, 100, new Uint8Array(10_000).fill(90), 2);
  const found = alignBody(flat, [], new Map([['toe', { at: { x: 40, y: 60 }, sd: 3 }]]), []);
  expect(found.points.get('toe')).toEqual({ x: 40, y: 60 });
  expect(found.variances.get('toe')).toBeCloseTo(9, 6);
});

it('carries a leg through a picture where it is hidden, by its motion before and after', () => {
  const own = limbs.filter(({ from }) => from === 'knee' || from === 'ankle');
  const names: readonly LandmarkName[] = ['knee', 'ankle', 'toe'];
  const at = (i: number) => {
    const move = (p: Point): Point =>
      turned(leg.knee, { x: p.x + 1.5 * i, y: p.y }, 0.012 * i * i - 0.03 * i);
    return { knee: move(leg.knee), ankle: move(leg.ankle), toe: move(leg.toe) };
  };
  const legs = Array.from({ length: 7 }, (_, i) => at(i));
  const hidden = 3;
  const pyramids = legs.map(({ knee, ankle, toe }, i) =>
    greyPyramid(240, 160, i === hidden ? new Uint8Array(240 * 160).fill(90) : drawLeg(knee, ankle, toe), 3),
  );
  const templates = own.flatMap((limb) => {
    const first = legs[0] ?? leg;
    const [a, b] = [first[limb.from as 'knee'], first[limb.to as 'toe']];
    const template = limbTemplate(pyramids[0] ?? [], limb, a, b, bodyLength);
    return template ? [{ template, weight: 1 }] : [];
  });
  const pictures = legs.map(
    (posture, i): StretchPicture => ({
      time: i / 60,
      pyramid: pyramids[i] ?? [],
      templates,
      lengths: [],
      pinned: new Map(
        i === 0 || i === 6 ? names.map((name) => [name, { at: posture[name as 'toe'], sd: 0.05 }]) : [],
      ),
      originX: 0,
      originY: 0,
    }),
  );
  // everything begins on the straight way between the marks
  const start = new Float64Array(legs.length * 6);
  names.forEach((name, n) => {
    const [a, b] = [at(0)[name as 'toe'], at(6)[name as 'toe']];
    legs.forEach((_, i) => {
      start[6 * i + 2 * n] = a.x + (i / 6) * (b.x - a.x);
      start[6 * i + 2 * n + 1] = a.y + (i / 6) * (b.y - a.y);
    });
  });
  const jerk = Object.fromEntries(names.map((name) => [name, 60_000])) as Record<LandmarkName, number>;
  const plan = [2, 1, 0].map((level) => ({ level, rounds: 4 }));
  const { places, variances } = layTogether(pictures, names, start, jerk, plan);
  legs.forEach((posture, i) => {
    names.forEach((name, n) => {
      const { x, y } = posture[name as 'toe'];
      const off = Math.hypot((places[6 * i + 2 * n] ?? 0) - x, (places[6 * i + 2 * n + 1] ?? 0) - y);
      expect(off, `${name} ${i}`).toBeLessThan(i === hidden ? 1.5 : 1);
    });
  });
  // it knows that it has not seen the hidden one
  expect(variances[3 * hidden + 2]).toBeGreaterThan(1.15 * (variances[3 * (hidden - 1) + 2] ?? 0));
});

it('draws a foot toward where its marks show it against the shank, however the leg has turned since', () => {
  // marked on a shank lying along x with a foot half as long, turned by a right angle; now the shank stands upright
  const knee = { x: 50, y: 20 };
  const ankle = { x: 50, y: 80 };
  const told = { x: 20, y: 80 };
  const folded = { x: 58, y: 50 };
  const flat = greyPyramid(100, 100, new Uint8Array(10_000).fill(90), 1);
  const turn = { before: 'knee' as const, along: 0, across: 0.5, sd: 6 };
  const found = alignBody(
    flat,
    [],
    new Map<LandmarkName, { at: Point; sd: number }>([
      ['knee', { at: knee, sd: 1e-4 }],
      ['ankle', { at: ankle, sd: 1e-4 }],
      ['toe', { at: folded, sd: 12 }],
    ]),
    [{ from: 'ankle', to: 'toe', length: 30, sd: 1e4, most: 60, mostSd: 1, turn }],
  );
  // two guesses of the toe, weighed by 1/12² and 1/6²
  expect(found.points.get('toe')?.x).toBeCloseTo((folded.x + 4 * told.x) / 5, 3);
  expect(found.points.get('toe')?.y).toBeCloseTo((folded.y + 4 * told.y) / 5, 3);
});
