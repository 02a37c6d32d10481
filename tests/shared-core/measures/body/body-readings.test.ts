import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { landmarkNames } from '#core/marks/landmark';
import { bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import type { Reading } from '#core/measures/reading';
import { plainMark, type Posture, type Swim } from '#core/swim-file/swim-schema';
import { bodyTruths } from './body-truths';
import { computed, markedSwim, type ModelSwim, noNoise, plainKick, readAll } from './model-swim';

/** Marks so fine that corrections for noise vanish. */
const fine = { ...noNoise, landmarkSd: 1e-4, eventSd: 1e-4, scenePointSd: 1e-4 };
const butterfly: ModelSwim = { ...plainKick, base: 'stroke', period: 1.1, shoulder: 0.07, cycles: 5 };

const withSwim = (input: BodyInput, change: (swim: Swim) => Partial<Swim>): BodyInput => ({
  ...input,
  swim: { ...input.swim, ...change(input.swim) },
});
const movePoints = (
  swim: Swim,
  move: (p: { x: number; y: number }) => { x: number; y: number },
): Pick<Swim, 'postures' | 'scene'> => {
  const line = <T extends { a: { x: number; y: number }; b: { x: number; y: number } }>(l: T): T => ({
    ...l,
    a: move(l.a),
    b: move(l.b),
  });
  const { scene } = swim;
  return {
    postures: swim.postures.map((p) => ({
      ...p,
      points: Object.fromEntries(
        Object.entries(p.points).map(([name, point]) => [name, move(point)]),
      ) as Posture['points'],
    })),
    scene: {
      ...scene,
      level: scene.level && line(scene.level),
      surface: scene.surface && line(scene.surface),
      scale: scene.scale && { ...scene.scale, line: line(scene.scale.line) },
    },
  };
};

function expectSame(
  a: ReadonlyMap<string, Reading>,
  b: ReadonlyMap<string, Reading>,
  tolerance: number,
): void {
  let compared = 0;
  for (const [id, first] of a) {
    const second = b.get(id);
    expect(second?.status, id).toBe(first.status);
    if (first.status !== 'computed' || second?.status !== 'computed') continue;
    const scale = Math.max(1e-3, Math.abs(first.value));
    expect(Math.abs(first.value - second.value), id).toBeLessThan(tolerance * scale);
    expect(Math.abs(first.interval.high - second.interval.high), id).toBeLessThan(
      tolerance * Math.max(scale, Math.abs(first.interval.high)),
    );
    compared += 1;
  }
  expect(compared).toBeGreaterThan(50);
}

const everyReading = (input: BodyInput): readonly Reading[] => [...readAll(input).readings.values()];

function expectHonest(readings: readonly Reading[]): void {
  for (const reading of readings) {
    if (reading.status === 'missing') {
      expect(reading.reasons.length, reading.id).toBeGreaterThan(0);
      continue;
    }
    const { low, high } = reading.interval;
    for (const v of [reading.value, low, high, reading.ownVariance, reading.sharedVariance]) {
      expect(Number.isFinite(v), `${reading.id} is finite`).toBe(true);
    }
    expect(high, reading.id).toBeGreaterThan(low);
    expect(reading.value, reading.id).toBeGreaterThanOrEqual(low);
    expect(reading.value, reading.id).toBeLessThanOrEqual(high);
    for (const cycle of reading.perCycle) expect(Number.isFinite(cycle.value), reading.id).toBe(true);
  }
}

describe('landmark readings of a swim whose truth is known', () => {
  it.each([
    ['plain kicking', plainKick],
    ['butterfly, swimming left on an uneven clip', { ...butterfly, travel: 'left', uneven: 0.3 }],
    ['butterfly at 120 a second, tilted', { ...butterfly, framesPerSecond: 120, tilt: -0.15 }],
  ] as [string, ModelSwim][])('come out true: %s', (_, model) => {
    const { context, readings } = readAll(markedSwim(model, fine));
    const truth = bodyTruths(model, context);
    let compared = 0;
    for (const [id, reading] of readings) {
      const real = truth.get(id);
      if (real === undefined || !Number.isFinite(real)) continue;
      if (reading.status === 'missing') throw new Error(`${id} is missing`);
      // frame rounding leaves events up to half a frame off: 0.4 % of sizes, 0.3 degrees of angles
      const tolerance =
        reading.unit === '°' ? 0.3 : Math.max(0.004 * Math.abs(real), reading.unit === '%L' ? 0.02 : 1e-3);
      expect(Math.abs(reading.value - real), `${id}: ${reading.value} for ${real}`).toBeLessThan(tolerance);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(60);
  });

  it('need body lines at kick tops and bottoms only for kick amplitude, joint angles and speed', () => {
    const model = { ...plainKick, every: 0 };
    const { context, readings } = readAll(markedSwim(model, fine));
    const truth = bodyTruths(model, context);
    const amplitude = computed(readings, 'kick-amplitude-toe');
    expect(amplitude.value / (truth.get('kick-amplitude-toe') ?? 0)).toBeCloseTo(1, 1.7);
    expect(computed(readings, 'knee-angle-at-kick-top').cycles).toBe(7);
    expect(computed(readings, 'speed-hip').notes).toContain('sparse-trace');
    expect(readings.get('body-wave-speed')?.status).toBe('missing');
  });
});

describe('landmark readings keep their symmetries', () => {
  const model = { ...butterfly, tilt: 0.05 };
  const base = markedSwim(model);
  const here = readAll(base).readings;

  it('mirroring the picture and the way of travel changes nothing', () => {
    const mirrored = withSwim(base, (swim) => {
      const moved = movePoints(swim, (p) => ({ x: swim.clip.width - p.x, y: p.y }));
      return { ...moved, scene: { ...moved.scene, travel: 'left' } };
    });
    expectSame(here, readAll(mirrored).readings, 1e-6);
  });

  it('a picture twice as fine, marked twice as fine, changes nothing', () => {
    const doubled = withSwim(base, (swim) => movePoints(swim, (p) => ({ x: 2 * p.x, y: 2 * p.y })));
    const twice = Object.fromEntries(landmarkNames.map((n) => [n, 4])) as BodyInput['error']['landmarkSd'];
    expectSame(
      here,
      readAll({ ...doubled, error: { ...base.error, landmarkSd: twice, scenePointSd: 3 } }).readings,
      1e-6,
    );
  });

  it('moving everything in the picture, or starting the clip later, changes nothing', () => {
    const moved = withSwim(base, (swim) => movePoints(swim, (p) => ({ x: p.x + 300, y: p.y - 120 })));
    expectSame(here, readAll(moved).readings, 1e-6);
    const late = { ...base.clock.table, starts: base.clock.table.starts.map((t) => t + 7_000_000) };
    expectSame(
      here,
      readAll({ ...base, clock: { ...base.clock, table: { ...late, endTick: late.endTick + 7_000_000 } } })
        .readings,
      1e-6,
    );
  });

  it('without a scale, lengths are in body lengths and shares of body length stay', () => {
    const free = withSwim(base, (swim) => ({ scene: { ...swim.scene, scale: null } }));
    const { readings } = readAll(free);
    expect(computed(readings, 'undulation-hip').unit).toBe('L');
    expect(computed(readings, 'speed-hip').unit).toBe('L/s');
    expect(computed(readings, 'undulation-relative-hip').value).toBeCloseTo(
      computed(here, 'undulation-relative-hip').value,
      9,
    );
    expect(computed(readings, 'undulation-hip').sharedVariance).toBe(0);
    expect(computed(here, 'undulation-hip').sharedVariance).toBeGreaterThan(0);
  });

  it('a swimmer on the back, upside down in the picture, bends the same joints the same way', () => {
    const turned = withSwim(base, (swim) => {
      const moved = movePoints(swim, (p) => ({ x: p.x, y: swim.clip.height - p.y }));
      return { ...moved, card: { ...swim.card, sideUp: 'back' } };
    });
    const { readings } = readAll(turned);
    for (const id of ['knee-angle', 'hip-angle', 'ankle-angle', 'shoulder-angle']) {
      expect(computed(readings, id).value, id).toBeCloseTo(computed(here, id).value, 6);
    }
    expect(computed(readings, 'trunk-pitch').value).toBeCloseTo(-computed(here, 'trunk-pitch').value, 6);
  });
});

describe('a swimmer on the side, filmed from below or above', () => {
  const joints = ['knee-angle', 'hip-angle', 'ankle-angle', 'shoulder-angle', 'elbow-angle'] as const;
  // the model bends both ways, a knee does not: it is laid lower than the line of the leg
  const bent = withSwim(markedSwim({ ...plainKick, tilt: 0 }), (swim) => ({
    postures: swim.postures.map((p): Posture => {
      const knee = p.points.knee ?? { x: 0, y: 0 };
      return { ...p, points: { ...p.points, knee: { x: knee.x, y: knee.y + 40 } } };
    }),
  }));
  const fromSide = readAll(bent).readings;
  const seen = (view: 'below' | 'above', flip: 1 | -1): ReadonlyMap<string, Reading> => {
    const turned = withSwim(bent, (swim) => ({
      ...movePoints(swim, (p) => ({ x: p.x, y: flip * p.y + (flip < 0 ? 15_000 : 0) })),
      card: { ...swim.card, view, sideUp: 'left-side' },
    }));
    return readAll(turned).readings;
  };

  it('bends the same joints the same way, whichever way round the camera was held', () => {
    for (const [view, flip] of [
      ['below', 1],
      ['above', -1],
    ] as const) {
      const readings = seen(view, flip);
      for (const id of joints)
        expect(computed(readings, id).value, id).toBeCloseTo(computed(fromSide, id).value, 6);
      for (const id of ['trunk-pitch', 'hip-height', 'undulation-toe', 'speed-hip'])
        expect(readings.get(id), id).toMatchObject({
          status: 'missing',
          reasons: [{ code: 'view-cannot-show', view }],
        });
    }
  });

  it('has no joint angles where no knee bends enough to say which way it does, nor on the front', () => {
    const card = { view: 'below', sideUp: 'left-side' } as const;
    const straight = withSwim(markedSwim({ ...plainKick, toe: 0.05 }), (swim) => ({
      card: { ...swim.card, ...card },
    }));
    const onFront = withSwim(bent, (swim) => ({ card: { ...swim.card, view: 'below' } }));
    for (const each of [straight, onFront])
      expect(readAll(each).readings.get('knee-angle')).toMatchObject({
        status: 'missing',
        reasons: [{ code: 'view-cannot-show', view: 'below' }],
      });
  });
});

describe('landmark readings that cannot be had say why', () => {
  const base = markedSwim(plainKick);
  const reasons = (input: BodyInput, id: string): readonly unknown[] => {
    const reading = readAll(input).readings.get(id);
    return reading?.status === 'missing' ? reading.reasons : [];
  };

  it('from a view that cannot show them', () => {
    const deck = withSwim(base, (swim) => ({ card: { ...swim.card, view: 'deck' } }));
    for (const reading of everyReading(deck)) {
      expect(reading).toMatchObject({
        status: 'missing',
        reasons: [{ code: 'view-cannot-show', view: 'deck' }],
      });
    }
  });

  it('without travel, surface, events, body lines or a body length', () => {
    const bare = withSwim(base, (swim) => ({ scene: { ...swim.scene, travel: null, surface: null } }));
    expect(reasons(bare, 'speed-hip')).toEqual([{ code: 'needs-scene', item: 'travel' }]);
    expect(reasons(bare, 'depth-hip')).toEqual([{ code: 'needs-scene', item: 'surface' }]);
    expect(
      reasons(
        withSwim(base, () => ({ events: [] })),
        'undulation-hip',
      ),
    ).toMatchObject([{ code: 'needs-events', kind: 'kick-top' }]);
    expect(
      reasons(
        withSwim(base, () => ({ postures: [] })),
        'knee-angle',
      ),
    ).toMatchObject([{ code: 'needs-landmark', landmark: 'hip' }]);
    const noArms = withSwim(base, (swim) => ({
      postures: swim.postures.map((p) => {
        const { fingertip: _, ...points } = p.points;
        return { ...p, points };
      }),
    }));
    expect(reasons(noArms, 'undulation-relative-hip')).toEqual([{ code: 'needs-body-length' }]);
    const known = { ...noArms, swimmer: { streamlineMetres: 2.27, bodyTable: null, birthYear: null } };
    expect(computed(readAll(known).readings, 'undulation-relative-hip').unit).toBe('L');
  });

  it('for one kick, a swimmer standing still, and points on one another', () => {
    expect(
      everyReading(markedSwim({ ...plainKick, cycles: 1, every: 0 })).some((r) => r.status === 'computed'),
    ).toBe(true);
    const still = readAll(markedSwim({ ...plainKick, speed: 0 }, noNoise)).readings;
    expect(still.get('foot-speed-over-swim')).toMatchObject({
      status: 'missing',
      reasons: [{ code: 'degenerate', what: 'zero-speed' }],
    });
    expect(still.get('speed-variation')).toMatchObject({ status: 'missing' });
    const heap = withSwim(base, (swim) => movePoints(swim, () => ({ x: 500, y: 300 })));
    expectHonest(everyReading(heap));
    const flat = withSwim(base, (swim) => ({
      ...movePoints(swim, (p) => ({ x: p.x, y: 300 })),
      scene: swim.scene,
    }));
    expectHonest(everyReading(flat));
    expect(readAll(flat).readings.get('undulation-hip')?.status).toBe('missing');
  });

  it('for points closer together than they can be marked, in one heap or at both ends', () => {
    // found by random marks: a body line of subnormal length made shares of it infinite
    const tiny = 5e-324;
    const at = (x: number, y: number): { x: number; y: number } => ({ x: x * tiny, y: y * tiny });
    const heap = { hip: at(0, 0), fingertip: at(0, 0), toe: at(0, 0), ankle: at(0, 0), knee: at(0, 0) };
    const speck = withSwim(base, (swim) => ({
      postures: [
        { frame: 0, points: { ...heap, wrist: at(0, 2), shoulder: at(1, 1), elbow: at(1, 2) }, hidden: [] },
      ],
      scene: { ...swim.scene, travel: null },
      events: [],
    }));
    expectHonest(everyReading(speck));
    expect(bodyContext(speck).bodyLength).toBeNull();
    // and a fingertip on the toe left no line to be straight against
    const folded = withSwim(base, (swim) => ({
      postures: swim.postures.map((p) => ({
        ...p,
        points: { ...p.points, fingertip: { x: (p.points.toe?.x ?? 0) + 1e-160, y: p.points.toe?.y ?? 0 } },
      })),
    }));
    expectHonest(everyReading(folded));
  });

  it('and never as NaN or an interval without width, whatever is marked', () => {
    const kinds = ['kick-top', 'kick-bottom', 'entry', 'exit', 'push-off', 'breakout'] as const;
    const point = fc.record({
      x: fc.double({ min: -3000, max: 5000, noNaN: true }),
      y: fc.double({ min: -3000, max: 5000, noNaN: true }),
    });
    const posture = fc.record({
      frame: fc.nat(120),
      points: fc.dictionary(fc.constantFrom(...landmarkNames), point, { maxKeys: 9 }),
    });
    const event = fc.record({ kind: fc.constantFrom(...kinds), frame: fc.nat(120) });
    fc.assert(
      fc.property(
        fc.array(posture, { maxLength: 40 }),
        fc.array(event, { maxLength: 14 }),
        fc.constantFrom(null, 'left', 'right'),
        (postures, events, travel) => {
          const wild = withSwim(base, (swim) => ({
            postures: postures.map((p): Posture => ({ ...p, hidden: [] })),
            scene: { ...swim.scene, travel },
            events: events.map((e, i) => ({ ...e, id: `w${i}`, ...plainMark })),
          }));
          expectHonest(everyReading(wild));
        },
      ),
      { numRuns: 200 },
    );
  });
});
