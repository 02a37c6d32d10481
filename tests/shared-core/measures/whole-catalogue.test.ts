import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { insidePicture } from '#core/measures/body/points/inside-picture';
import { catalogue } from '#core/measures/families';
import type { Reading } from '#core/measures/reading';
import { type EventMark, plainMark, type Posture } from '#core/swim-file/swim-schema';
import { plainKick } from './body/model-swim';
import { mapPoints, marked, readAll, stroking, withSwim } from './marked-whole';

/** Every reading is there, once, and is either whole and finite or says why it is not there. */
function expectSound(readings: readonly Reading[]): void {
  expect(readings.map(({ id }) => id)).toEqual(catalogue.map(({ id }) => id));
  for (const reading of readings) {
    if (reading.status === 'missing') {
      expect(reading.reasons.length, reading.id).toBeGreaterThan(0);
      continue;
    }
    const { value, interval, otherInterval, ownVariance, sharedVariance, perCycle } = reading;
    const other = otherInterval ? [otherInterval.low, otherInterval.high] : [];
    for (const each of [value, interval.low, interval.high, ownVariance, sharedVariance, ...other])
      expect(Number.isFinite(each), reading.id).toBe(true);
    for (const cycle of perCycle) expect(Number.isFinite(cycle.value), reading.id).toBe(true);
    expect(interval.low <= value && value <= interval.high, reading.id).toBe(true);
    expect(interval.high > interval.low, reading.id).toBe(true);
    if (otherInterval) expect(otherInterval.high > otherInterval.low, reading.id).toBe(true);
  }
}

describe('input that tells little or nothing', () => {
  const kick = marked(plainKick, 1);
  const stroke = marked(stroking, 2);
  const { scene } = stroke.swim;
  const here = { x: 500, y: 400 };
  const cases: readonly (readonly [string, BodyInput])[] = [
    ['nothing marked', withSwim(stroke, { events: [], postures: [] })],
    ['no events', withSwim(stroke, { events: [] })],
    ['no body lines', withSwim(stroke, { postures: [] })],
    ['one kick', withSwim(kick, { events: kick.swim.events.slice(0, 3) })],
    ['one mark', withSwim(kick, { events: kick.swim.events.slice(0, 1) })],
    ['one body line', withSwim(stroke, { postures: stroke.swim.postures.slice(40, 41) })],
    [
      'all events at one time',
      withSwim(stroke, { events: stroke.swim.events.map((each) => ({ ...each, frame: 60 })) }),
    ],
    ['landmarks on one level line', mapPoints(stroke, ({ x }) => ({ x, y: 400 }))],
    ['landmarks on one upright line', mapPoints(stroke, ({ y }) => ({ x: 400, y }))],
    ['all landmarks on one point', mapPoints(stroke, () => here)],
    ['a swimmer who does not move', marked({ ...stroking, speed: 0, surge: 0 }, 3)],
    ['a swimmer who goes backward', marked({ ...stroking, speed: -0.4 }, 4)],
    ['points far out of the picture', mapPoints(stroke, ({ x, y }) => ({ x: x * 1e4 - 4e6, y: y * 1e4 }))],
    [
      'no scene',
      withSwim(stroke, { scene: { ...scene, travel: null, level: null, surface: null, scale: null } }),
    ],
    [
      'scene lines without length',
      withSwim(stroke, {
        scene: {
          ...scene,
          level: { a: here, b: here },
          surface: { a: here, b: here },
          scale: scene.scale && { ...scene.scale, line: { a: here, b: here } },
        },
      }),
    ],
    [
      'a rectangle and a straight line without extent',
      withSwim(stroke, {
        scene: {
          ...scene,
          plane: { corners: [here, here, here, here], alongMetres: 2, upMetres: 1, frame: 0 },
          straights: [[here, here, here]],
        },
      }),
    ],
  ];
  it.each(cases)('%s: every reading is finite or says why it is missing', (_, input) => {
    expectSound(readAll(input));
  });

  it('any marks at all: every reading is finite or says why it is missing', () => {
    const frames = stroke.clock.table.starts.length;
    const event = fc.record({
      kind: fc.constantFrom(...eventKinds),
      frame: fc.integer({ min: 0, max: frames - 1 }),
      metres: fc.constantFrom(null, 0, 5, 15),
    });
    const coordinate = fc.oneof(
      fc.integer({ min: 0, max: 1920 }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    );
    const point = fc.record({ x: coordinate, y: coordinate });
    const posture = fc.tuple(
      fc.integer({ min: 0, max: frames - 1 }),
      fc.array(fc.option(point, { nil: null }), { minLength: 9, maxLength: 9 }),
    );
    fc.assert(
      fc.property(
        fc.array(event, { maxLength: 25 }),
        fc.array(posture, { maxLength: 25 }),
        (events, lines) => {
          const byFrame = new Map(lines);
          const postures = [...byFrame].map(([frame, points]): Posture => {
            const laid: Posture['points'] = {};
            landmarkNames.forEach((name, i) => {
              const at = points[i];
              if (at) laid[name] = at;
            });
            return { frame, points: laid, hidden: [] };
          });
          const marks = events.map((each, i): EventMark => ({ ...plainMark, ...each, id: `e${i}` }));
          expectSound(readAll(withSwim(stroke, { events: marks, postures })));
        },
      ),
      { numRuns: 120 },
    );
  });
});

describe('points outside the picture', () => {
  const whole = marked(stroking, 2);
  const { clip } = whole.swim;
  const moved = (names: readonly string[], every: number): BodyInput =>
    withSwim(whole, {
      postures: whole.swim.postures.map((posture, i): Posture => {
        if (i % every !== 0) return posture;
        const points = Object.entries(posture.points).map(([name, point]) =>
          names.includes(name) ? [name, { x: point.x, y: clip.height + 1 }] : [name, point],
        );
        return { ...posture, points: Object.fromEntries(points) as Posture['points'] };
      }),
    });
  const of = (readings: readonly Reading[], id: string): Reading | undefined =>
    readings.find((each) => each.id === id);

  it('are not read: where none is left, that is said first, and how many there are', () => {
    const readings = readAll(moved(['toe'], 1));
    expectSound(readings);
    for (const id of ['ankle-angle', 'kick-amplitude-toe', 'undulation-toe', 'frontal-thickness']) {
      const reading = of(readings, id);
      expect(reading?.status === 'missing' && reading.reasons[0], id).toEqual({
        code: 'outside-picture',
        landmark: 'toe',
        frames: whole.swim.postures.length,
      });
    }
    expect(of(readings, 'knee-angle')).toEqual(of(readAll(whole), 'knee-angle'));
  });

  it('leave readings as they are without them, which say so', () => {
    const left = whole.swim.postures.map((posture, i): Posture => {
      const { toe: _, ...points } = posture.points;
      return i % 5 === 0 ? { ...posture, points } : posture;
    });
    const without = of(readAll(withSwim(whole, { postures: left })), 'ankle-angle');
    const outside = of(readAll(moved(['toe'], 5)), 'ankle-angle');
    if (without?.status !== 'computed' || outside?.status !== 'computed') throw new Error('no angle');
    expect({ ...outside, notes: [] }).toEqual({ ...without, notes: [] });
    expect(outside.notes).toContain('points-outside-picture');
    expect(without.notes).not.toContain('points-outside-picture');
  });

  it('begin beyond the edge, which itself is inside', () => {
    const ends = { frame: 0, points: { hip: { x: 0, y: 0 }, toe: { x: 1920, y: 1080 } }, hidden: [] };
    const picture = { width: 1920, height: 1080 };
    expect(insidePicture([ends], picture).postures).toEqual([ends]);
    const past = { ...ends, points: { ...ends.points, toe: { x: 1920.01, y: 1080 } } };
    const kept = insidePicture([ends, past], picture);
    expect(kept.postures.map(({ points }) => Object.keys(points))).toEqual([['hip', 'toe'], ['hip']]);
    expect([...kept.outside]).toEqual([['toe', 1]]);
  });
});
