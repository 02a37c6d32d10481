import { describe, expect, it } from 'vitest';
import { landmarkNames } from '#core/marks/landmark';
import { bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { bodyFamilies } from '#core/measures/body/body-families';
import { knownPostures } from '#core/follow/known-postures';
import { followedSpread } from '#core/measures/body/points/followed-spread';
import { assumedMarkingError } from '#core/uncertainty/assumed-marking-error';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { FollowedRun, Posture } from '#core/swim-file/swim-schema';
import { aMark, aSwim } from '../../../renderer/a-swim';
import { normal, seeded } from '../../../../sample-clips/model/seeded';
import { Coverage } from '../coverage-table';
import { bodyTruths } from './body-truths';
import { computed, markedSwim, type ModelSwim, noNoise, plainKick, readAll } from './model-swim';

/** The swim with its points followed from frame to frame, and marked by the coach on every `keep`th posture only. */
function followedInstead(input: BodyInput, keep: number, shift: (i: number) => number = () => 0): BodyInput {
  const { swim } = input;
  const followed = landmarkNames.map(
    (landmark): FollowedRun => ({
      landmark,
      frame: swim.postures[0]?.frame ?? 0,
      points: swim.postures.map(({ points }, i) => [
        (points[landmark]?.x ?? 0) + shift(i),
        (points[landmark]?.y ?? 0) + shift(i + 0.5),
        0.95,
      ]),
    }),
  );
  const postures = keep > 0 ? swim.postures.filter((_, i) => i % keep === 0) : [];
  return { ...input, swim: { ...swim, postures, followed } };
}

describe('followed points', () => {
  const base = markedSwim(plainKick);

  it('join the coach’s marks in every trace, and each reading says how many there were', () => {
    const marked = readAll(base).readings;
    const followed = readAll(followedInstead(base, 10)).readings;
    for (const id of ['undulation-toe', 'speed-hip', 'body-wave-speed', 'foot-speed-down', 'knee-angle']) {
      const [a, b] = [computed(marked, id), computed(followed, id)];
      // what noise lifts an extreme by comes off, and more of it where points are less sure
      expect(Math.abs(b.value / a.value - 1), id).toBeLessThan(id.startsWith('foot') ? 0.04 : 0.02);
      expect(a.followed, id).toBe(0);
      expect(b.followed, id).toBeGreaterThan(50);
      // a followed point is worth less than a marked one
      expect(b.ownVariance, id).toBeGreaterThan(a.ownVariance);
    }
    const frames = computed(followed, 'undulation-toe').from.postureFrames.length;
    const kept = Math.ceil(frames / 10);
    expect(Math.abs(computed(followed, 'undulation-toe').followed - (frames - kept))).toBeLessThanOrEqual(1);
  });

  it('never stand in for a point the coach marked or called hidden, nor count when they are not sure', () => {
    const run: FollowedRun = {
      landmark: 'toe',
      frame: 4,
      points: [
        [1, 1, 0.99],
        [2, 2, 0.95],
        [3, 3, 0.89],
        [4, 4, 0.9],
      ],
    };
    const surer: FollowedRun = { landmark: 'toe', frame: 7, points: [[9, 9, 0.97]] };
    const postures: Posture[] = [
      { frame: 4, points: { toe: { x: 50, y: 50 } }, hidden: [] },
      { frame: 5, points: {}, hidden: ['toe'] },
    ];
    const found = knownPostures(
      { postures, followed: [run, surer], seen: [] },
      assumedMarkingError(1080),
      500,
    );
    expect(found.postures.map(({ frame, points }) => [frame, points.toe?.x ?? null])).toEqual([
      [4, 50],
      [5, null],
      [7, 9],
    ]);
  });

  it('count less the closer they follow one another, and never for more than one', () => {
    const sixty = followedSpread(1 / 60);
    // by hand: ρ = e^(−1/6) = 0.84648; at rest (1 + ρ) / (1 − ρ)
    expect(sixty.slow).toBeCloseTo(1.84648 / 0.15352, 2);
    expect(sixty.wave).toBeLessThan(sixty.slow);
    expect(followedSpread(1 / 240).slow).toBeGreaterThan(sixty.slow);
    expect(followedSpread(10).slow).toBeCloseTo(1, 6);
  });

  it('give intervals that hold the truth when their errors linger as taken to', () => {
    const coverage = new Coverage();
    for (let seed = 1; seed <= 50; seed++) {
      const random = seeded(seed);
      const model: ModelSwim = {
        ...plainKick,
        period: 0.4 + 0.3 * random(),
        cycles: 4 + Math.floor(6 * random()),
        toe: 0.15 + 0.15 * random(),
        speed: 1 + random(),
        pixelsPerMetre: 200,
      };
      const input = markedSwim(model, { ...noNoise, landmarkSd: 2, normal: () => normal(random) });
      const clean = markedSwim(model, { ...noNoise, landmarkSd: 2, normal: () => 0 });
      const rho = Math.exp(-1 / 60 / 0.1);
      const drifting = landmarkNames.map((landmark): FollowedRun => {
        const drift = { x: 4 * normal(random), y: 4 * normal(random) };
        return {
          landmark,
          frame: 0,
          points: clean.swim.postures.map(({ points }) => {
            drift.x = rho * drift.x + 4 * Math.sqrt(1 - rho * rho) * normal(random);
            drift.y = rho * drift.y + 4 * Math.sqrt(1 - rho * rho) * normal(random);
            return [(points[landmark]?.x ?? 0) + drift.x, (points[landmark]?.y ?? 0) + drift.y, 0.95];
          }),
        };
      });
      const postures = input.swim.postures.filter((_, i) => i % 12 === 0);
      const context = bodyContext({ ...input, swim: { ...input.swim, postures, followed: drifting } });
      const truth = new Map(
        [...bodyTruths(model, context)].filter(([id]) =>
          /^(speed-hip|foot-speed-down|undulation-(toe|hip|ankle)|kick-amplitude-toe|body-wave-speed)$/.test(
            id,
          ),
        ),
      );
      for (const family of bodyFamilies) coverage.add(family.read(context), truth);
    }
    for (const row of coverage.rows()) {
      // 50 swims: three standard errors are 9 %
      expect(row.held, row.id).toBeGreaterThan(0.95 - 0.09);
      expect(Math.abs(row.lean), row.id).toBeLessThan(0.2 + (3 * 0.51) / Math.sqrt(row.drawn));
    }
    expect(coverage.rows().length).toBeGreaterThan(4);
  });
});

describe('instants between frames', () => {
  it('of accepted proposals time the event, with their own error, and need no re-marking', () => {
    const events = [0, 1, 2, 3, 4, 5].map((i) => ({
      ...aMark(`k${i}`, 'kick-top', 10 + 15 * i),
      refined: { frames: 0.1 * i, sdSeconds: 0.002 },
    }));
    const read = (marks: typeof events) =>
      computeReadings(readingContext(aSwim({ events: marks }), { swimmer: null, markingError: null }));
    const tempo = read(events).find((each) => each.id === 'kick-tempo');
    if (tempo?.status !== 'computed') throw new Error('no tempo');
    // by hand: 15.1 frames at 50 a second
    expect(tempo.value).toBeCloseTo(0.302, 12);
    // Var = σ² / Σ(i − 2.5)² = σ² / 17.5
    expect(tempo.ownVariance).toBeCloseTo(0.002 ** 2 / 17.5, 12);
    // one that claims more than a twentieth of a frame is not believed
    const proud = events.map((each) => ({ ...each, refined: { frames: 0, sdSeconds: 1e-9 } }));
    const held = read(proud).find((each) => each.id === 'kick-tempo');
    expect(held?.status === 'computed' && held.ownVariance).toBeCloseTo(0.001 ** 2 / 17.5, 12);
  });
});
