import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circularMean, turnedTo } from '#core/measures/body/points/angles';
import { bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { goesOtherWay } from '#core/measures/body/context/other-way';
import { postureMeasures } from '#core/measures/body/posture/posture-measures';
import type { PosturePoints } from '#core/measures/body/posture/posture-measure';
import { recordFromTable } from '#core/timeline/frame-times-record';
import { readAll as readWhole } from '../marked-whole';
import { drawBody } from './drawn-body';
import { normal, seeded } from '../../../../sample-clips/model/seeded';
import { computed, markedSwim, noNoise, plainKick, readAll } from './model-swim';

function normalFrom(seed: number): () => number {
  const random = seeded(seed);
  return () => normal(random);
}

const turnedRound = (input: BodyInput): BodyInput => ({
  ...input,
  swim: {
    ...input.swim,
    scene: { ...input.swim.scene, travel: input.swim.scene.travel === 'left' ? 'right' : 'left' },
  },
});

describe('a swim whose direction of travel is said the wrong way round', () => {
  const input = turnedRound(markedSwim(plainKick));
  const { context, readings } = readAll(input);

  it('is told so, and not that the swimmer stands still', () => {
    expect(goesOtherWay(context)).toBe(true);
    expect(goesOtherWay(readAll(markedSwim(plainKick)).context)).toBe(false);
    expect(readings.get('speed-variation')).toMatchObject({
      status: 'missing',
      reasons: [{ code: 'degenerate', what: 'other-way' }],
    });
    for (const id of ['trunk-pitch', 'speed-hip', 'knee-angle'])
      expect(computed(readings, id).doubts, id).toContainEqual({ code: 'goes-other-way', frames: [] });
    // what is the same both ways is not doubted
    for (const id of ['straightness', 'undulation-hip', 'kick-amplitude-toe'])
      expect(computed(readings, id).doubts, id).toEqual([]);
    // nor are times: a speed below nothing is no speed that nobody swims
    for (const each of readWhole(input))
      if (each.status === 'computed' && ['kick-frequency', 'down-kick-time'].includes(each.id))
        expect(each.doubts, each.id).toEqual([]);
  });

  it('has a trunk pitch beside half a turn, as narrow as the right way round', () => {
    const wrong = computed(readings, 'trunk-pitch');
    const right = computed(readAll(markedSwim(plainKick)).readings, 'trunk-pitch');
    expect(Math.abs(turnedTo(0, 180 - wrong.value - right.value))).toBeLessThan(1e-6);
    expect(wrong.singles?.sd).toBeCloseTo(right.singles?.sd ?? Number.NaN, 6);
    expect(wrong.interval.high - wrong.interval.low).toBeCloseTo(right.interval.high - right.interval.low, 6);
  });

  it('says nothing where the camera overtakes a swimmer whose head lies ahead', () => {
    const swim = markedSwim({ ...plainKick, speed: -0.4 });
    expect(goesOtherWay(bodyContext(swim))).toBe(false);
  });
});

describe('means of directions', () => {
  it('know no place where a turn begins', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.array(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 1, maxLength: 30 }),
        fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 30, maxLength: 30 }),
        (middle, offsets, turns) => {
          const plain = circularMean(offsets) ?? Number.NaN;
          const moved = circularMean(offsets.map((each, i) => middle + each + 360 * (turns[i] ?? 0)));
          expect(Math.abs(turnedTo(0, (moved ?? Number.NaN) - middle - plain))).toBeLessThan(1e-6);
        },
      ),
    );
    expect(circularMean([])).toBeNull();
    expect(circularMean([0, 180])).toBeNull();
  });
});

describe('an elbow', () => {
  it('that is over-stretched reads above 180°, and does not fold back', () => {
    const measure = postureMeasures.find(({ id }) => id === 'elbow-angle');
    for (const angle of [60, 150, 180, 190, 200, 230, 260]) {
      const turn = ((180 - angle) * Math.PI) / 180;
      const points: PosturePoints = {
        shoulder: { x: 0, y: 0 },
        elbow: { x: 0.3, y: 0 },
        wrist: { x: 0.3 + 0.27 * Math.cos(turn), y: -0.27 * Math.sin(turn) },
      };
      expect(measure?.read(points, { belly: 1, sd: 0.003 })).toBeCloseTo(angle, 9);
    }
  });
});

describe('frames put in front of a swim', () => {
  const later = ({ swim, clock, ...rest }: BodyInput, frames: number): BodyInput => {
    const { starts, ticksPerSecond, endTick } = clock.table;
    const gap = Math.round(ticksPerSecond / 60);
    const front = Array.from({ length: frames }, (_, i) => i * gap);
    const table = {
      ticksPerSecond,
      starts: [...front, ...starts.map((start) => start + frames * gap)],
      endTick: endTick + frames * gap,
    };
    return {
      ...rest,
      clock: { ...clock, table },
      swim: {
        ...swim,
        clip: { ...swim.clip, frameTimes: recordFromTable(table) },
        events: swim.events.map((each) => ({ ...each, frame: each.frame + frames })),
        postures: swim.postures.map((each) => ({ ...each, frame: each.frame + frames })),
      },
    };
  };

  it('change no reading, though body lines lie equally near to kicks on either side', () => {
    // a body line on every second frame: a kick marked between two of them has one as near before as after
    const halves = [20, 24, 30].map((perKick) =>
      markedSwim({ ...plainKick, framesPerSecond: 60, period: perKick / 60, every: 2, cycles: 9 }),
    );
    const drawn = [5, 6, 7, 8, 9, 10].map((seed) => drawBody(seed).input);
    for (const input of [...halves, ...drawn])
      for (const frames of [1, 1000]) {
        const after = new Map(readWhole(later(input, frames)).map((each) => [each.id, each]));
        for (const was of readWhole(input)) {
          const is = after.get(was.id);
          expect(is?.status, was.id).toBe(was.status);
          if (was.status !== 'computed' || is?.status !== 'computed') continue;
          const width = was.interval.high - was.interval.low;
          // a thousandth of the interval: rounding of times
          expect(Math.abs(is.value - was.value), was.id).toBeLessThan(1e-3 * width);
          expect(Math.abs(is.interval.low - was.interval.low), was.id).toBeLessThan(1e-3 * width);
        }
      }
  });
});

describe('phases of a swim that is only kicked', () => {
  it('are counted from the top of the kick, and stay with any one mark fewer', () => {
    let compared = 0;
    for (const seed of [3, 4, 8, 12, 15]) {
      const input = markedSwim(
        { ...plainKick, cycles: 4 + (seed % 3), travel: 'left' },
        { ...noNoise, normal: normalFrom(seed), landmarkSd: 1, eventSd: 0.004 },
      );
      const whole = readAll(input).readings;
      for (const left of input.swim.events) {
        const fewer = readAll({
          ...input,
          swim: { ...input.swim, events: input.swim.events.filter((each) => each !== left) },
        }).readings;
        for (const [id, was] of whole) {
          if (!id.startsWith('harmonic-phase') || was.status !== 'computed') continue;
          const is = fewer.get(id);
          if (is?.status !== 'computed') continue;
          const room = was.interval.high - was.value + is.interval.high - is.value;
          expect(Math.abs(turnedTo(0, is.value - was.value)), `${id} without ${left.id}`).toBeLessThan(room);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(500);
  });

  it('are refused where no top is marked, and not counted from the bottoms', () => {
    const input = markedSwim(plainKick);
    const events = input.swim.events.filter(({ kind }) => kind !== 'kick-top');
    const { readings } = readAll({ ...input, swim: { ...input.swim, events } });
    expect(readings.get('harmonic-phase-1-hip')).toMatchObject({
      status: 'missing',
      reasons: [{ code: 'needs-events', kind: 'kick-top' }],
    });
    expect(computed(readings, 'harmonic-1-hip').value).toBeGreaterThan(0);
  });
});
