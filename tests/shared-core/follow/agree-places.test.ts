import { expect, it } from 'vitest';
import { agreePlaces, type SaidPicture } from '#core/follow/agree-places';
import { greyPyramid } from '#core/follow/grey-pyramid';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/point';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import { bodyLength, drawLeg, leg, turned } from './drawn-leg';

const names = ['knee', 'ankle', 'toe'] as const;
type Leg = Readonly<Record<(typeof names)[number], Point>>;
const markSd = 0.9;

/** The leg as it moves and turns from picture to picture. */
const legs = Array.from({ length: 5 }, (_, i): Leg => {
  const move = (point: Point): Point => {
    const on = turned(leg.knee, point, 0.05 * (i - 2));
    return { x: on.x + 6 * (i - 2), y: on.y + 3 * Math.sin(i) };
  };
  return { knee: move(leg.knee), ankle: move(leg.ankle), toe: move(leg.toe) };
});

function saidBy(random: () => number, sd: number, drawn: readonly Leg[] = legs): readonly SaidPicture[] {
  return drawn.map((own, i) => ({
    time: i / 10,
    pyramid: greyPyramid(240, 160, drawLeg(own.knee, own.ankle, own.toe), 3),
    said: new Map(
      names.map((name): [LandmarkName, { at: Point; sd: number }] => [
        name,
        { at: { x: own[name].x + sd * normal(random), y: own[name].y + sd * normal(random) }, sd: markSd },
      ]),
    ),
  }));
}

const offs = (places: readonly ReadonlyMap<LandmarkName, Point>[]): readonly number[] =>
  places.flatMap((own, i) =>
    names.map((name) => {
      const [is, should] = [own.get(name), legs[i]?.[name]];
      return Math.hypot((is?.x ?? 0) - (should?.x ?? 0), (is?.y ?? 0) - (should?.y ?? 0));
    }),
  );
const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / values.length);

it('evens out what hands err by from mark to mark', () => {
  const random = seeded(31);
  const before: number[] = [];
  const after: number[] = [];
  for (let again = 0; again < 8; again++) {
    const pictures = saidBy(random, markSd);
    before.push(
      ...offs(pictures.map(({ said }) => new Map([...said].map(([name, { at }]) => [name, at] as const)))),
    );
    after.push(...offs(agreePlaces(pictures, bodyLength, 4)));
  }
  // two axes of 0.9 px; five marks of one place would leave 1/√5 = 0.45 of it, and along a plain shank the pictures say little
  expect(rootMeanSquare(before)).toBeGreaterThan(1.1);
  expect(rootMeanSquare(after)).toBeLessThan(0.7 * rootMeanSquare(before));
});

it('leaves marks without an error about where they are, and a lone picture as it is', () => {
  const exact = saidBy(seeded(1), 0);
  expect(Math.max(...offs(agreePlaces(exact, bodyLength, 4)))).toBeLessThan(0.4);
  const [lone] = saidBy(seeded(2), markSd);
  if (!lone) throw new Error('no picture');
  for (const [name, at] of agreePlaces([lone], bodyLength, 3)[0] ?? []) {
    expect(at.x).toBeCloseTo(lone.said.get(name)?.at.x ?? 0, 4);
    expect(at.y).toBeCloseTo(lone.said.get(name)?.at.y ?? 0, 4);
  }
});

it('never moves a mark far, even where a picture shows something else than was said', () => {
  const pictures = saidBy(seeded(3), markSd);
  const wrong = legs.map((own, i): Leg => {
    const away = i === 2 ? 9 : 0;
    return {
      knee: { x: own.knee.x, y: own.knee.y + away },
      ankle: { x: own.ankle.x, y: own.ankle.y + away },
      toe: { x: own.toe.x, y: own.toe.y + away },
    };
  });
  const drawn = saidBy(seeded(3), 0, wrong);
  const mixed = pictures.map((picture, i) => ({ ...picture, pyramid: drawn[i]?.pyramid ?? [] }));
  agreePlaces(mixed, bodyLength, 4).forEach((own, i) => {
    for (const [name, at] of own) {
      const said = pictures[i]?.said.get(name)?.at ?? { x: 0, y: 0 };
      // 1.1 % of the body length
      expect(Math.hypot(at.x - said.x, at.y - said.y)).toBeLessThan(0.0111 * bodyLength);
    }
  });
});

it('leaves a landmark alone that holds no limb there', () => {
  const pictures = saidBy(seeded(4), markSd).map((picture, i) =>
    i === 1 ? { ...picture, said: new Map([...picture.said].filter(([name]) => name === 'toe')) } : picture,
  );
  const toe = agreePlaces(pictures, bodyLength, 2)[1]?.get('toe');
  expect(toe).toEqual(pictures[1]?.said.get('toe')?.at);
});
