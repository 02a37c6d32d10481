import { describe, expect, it } from 'vitest';
import type { BodyContext } from '#core/measures/body/context/body-context';
import { isWhole } from '#core/measures/body/context/body-context';
import { catalogue, families } from '#core/measures/families';
import type { Interval } from '#core/measures/reading';
import { drawModel } from './body/draw-model';
import { type DrawnBody, drawBody, drawThirdBody, drawVariedBody } from './body/drawn-body';
import { contextOf, drawSwim } from './drawn-swim';
import { drawUnderwater } from './drawn-underwater';
import { drawVariedKicking, drawVariedSwim } from './drawn-varied-swim';

/** Ids of readings that have that interval in a swim. */
function withInterval(context: BodyContext, question: Interval['question']): readonly string[] {
  if (!isWhole(context)) throw new Error('a drawn swim is read whole');
  return families
    .flatMap((family) => family.read(context))
    .flatMap((reading) =>
      reading.status === 'computed' &&
      [reading.interval, reading.otherInterval].some((each) => each?.question === question)
        ? [reading.id]
        : [],
    );
}

describe('the swims that the intervals are proved on', () => {
  const seeds = Array.from({ length: 12 }, (_, i) => 300 + i);
  const bodies = seeds.map(drawBody);
  const events = seeds.flatMap((seed) => [drawSwim(seed), drawUnderwater(seed)]);
  const varied = [drawVariedSwim, drawVariedKicking].flatMap((draw) => seeds.slice(0, 4).map(draw));

  it('hold every reading of the catalogue, with its truth known', () => {
    const drawn = new Set<string>();
    const add = (context: BodyContext, truth: ReadonlyMap<string, number>): void => {
      for (const id of withInterval(context, 'this-swim')) if (truth.has(id)) drawn.add(id);
    };
    for (const { context, truth } of [...bodies, ...seeds.slice(0, 6).map(drawThirdBody)])
      add(context, truth);
    for (const { swim, eventSd, truth } of events) add(contextOf(swim, eventSd), truth);
    expect(catalogue.map(({ id }) => id).filter((id) => !drawn.has(id))).toEqual([]);
  });

  it('hold every interval of the swimmer’s own spread, with the habit known', () => {
    const known = new Set<string>();
    const had = new Set<string>();
    const add = (context: BodyContext, truth: ReadonlyMap<string, number>): void => {
      for (const id of truth.keys()) known.add(id);
      for (const id of withInterval(context, 'this-swimmer')) had.add(id);
    };
    for (const { context, truth } of seeds.slice(0, 4).map(drawVariedBody)) add(context, truth);
    for (const { swim, eventSd, truth } of varied) add(contextOf(swim, eventSd), truth);
    expect(had.size).toBeGreaterThan(80);
    expect([...had].filter((id) => !known.has(id))).toEqual([]);
  });

  it('are filmed at 25 to 240 a second, evenly and not, level and tilted, over 2 to 12 cycles, with marks missing', () => {
    const films = Array.from({ length: 300 }, (_, i) => drawSwim(7000 + i).film);
    const among = (share: number): boolean => share > 0.1 && share < 0.9;
    const share = <T>(rows: readonly T[], of: (row: T) => boolean): boolean =>
      among(rows.filter(of).length / rows.length);
    const rates = films.map(({ rate }) => rate);
    expect(Math.min(...rates)).toBeLessThan(28);
    expect(Math.min(...rates)).toBeGreaterThanOrEqual(25);
    expect(Math.max(...rates)).toBeGreaterThan(235);
    expect(Math.max(...rates)).toBeLessThanOrEqual(240);
    expect(share(films, ({ uneven }) => uneven > 0)).toBe(true);
    expect(share(films, ({ slowdown }) => slowdown > 1)).toBe(true);
    const models = Array.from({ length: 600 }, (_, i) => drawModel(7000 + i));
    const of = (base: 'kick' | 'stroke') => models.filter(({ model }) => model.base === base);
    expect([...new Set(of('kick').map(({ model }) => model.cycles))].sort((a, b) => a - b)).toEqual([
      2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
    ]);
    expect(share(models, ({ model }) => model.base === 'stroke')).toBe(true);
    expect([...new Set(models.map(({ model }) => model.framesPerSecond))].sort((a, b) => a - b)).toEqual([
      25, 30, 50, 60, 120, 240,
    ]);
    expect(share(models, ({ model }) => model.uneven > 0)).toBe(true);
    expect(share(models, ({ model }) => model.hidden > 0.01)).toBe(true);
    expect(share(models, ({ model }) => model.every === 0)).toBe(true);
    expect(share(models, ({ model }) => model.travel === 'left')).toBe(true);
    // tilted by up to 6 degrees to either side, sinking and rising
    expect(share(models, ({ model }) => model.tilt > 0.02)).toBe(true);
    expect(share(models, ({ model }) => model.tilt < -0.02)).toBe(true);
    expect(share(models, ({ model }) => model.driftUp > 0.02)).toBe(true);
    expect(share(models, ({ model }) => model.driftUp < -0.02)).toBe(true);
    // marks from a sharp eye's to a careless one's; the known length and the plane are off as well
    expect(share(models, ({ noise }) => noise.landmarkSd > 2)).toBe(true);
    expect(share(models, ({ noise }) => noise.eventSd > 0.008)).toBe(true);
    expect(models.every(({ noise }) => noise.scenePointSd > 0 && noise.offPlaneSd > 0)).toBe(true);
  });

  it('are really marked so: landmarks missing, pictures uneven, the length in the picture off', () => {
    const points = (body: DrawnBody): number =>
      body.input.swim.postures.reduce((sum, { points: of }) => sum + Object.keys(of).length, 0) /
      (9 * body.input.swim.postures.length);
    for (const body of bodies) {
      if (body.model.hidden > 0.02) expect(points(body)).toBeLessThan(1);
      else if (body.model.hidden === 0) expect(points(body)).toBe(1);
      const { starts } = body.input.clock.table;
      const gaps = new Set(starts.slice(1).map((start, i) => start - (starts[i] ?? 0)));
      if (body.model.uneven > 0.05) expect(gaps.size).toBeGreaterThan(3);
      const { scale } = body.input.swim.scene;
      // drawn 2.5 m long, told otherwise
      expect(scale?.metres).not.toBe(2.5);
    }
    expect(bodies.some(({ model }) => model.hidden > 0.02)).toBe(true);
    expect(bodies.some(({ model }) => model.uneven > 0.05)).toBe(true);
  });
});
