import { describe, expect, it } from 'vitest';
import { kickShape, waveLead } from '../../sample-clips/model/kick-wave';
import { strokingArm } from '../../sample-clips/model/stroking-arm';
import { type Body, type PoolXY, swimmerModel } from '../../sample-clips/model/swimmer-model';
import { fromToe, lengths, swingGain } from '../../sample-clips/model/technique';
import { trueEvents } from '../../sample-clips/model/true-events';
import { waterSurface } from '../../sample-clips/model/water-surface';
import { scenarios } from '../../sample-clips/scenario';

const far = (a: PoolXY, b: PoolXY): number => Math.hypot(a.x - b.x, a.y - b.y);
const instants = (many: number, length: number): number[] =>
  Array.from({ length: many }, (_, i) => (i / many) * length);
/** Angle at `joint` on the side of the back, degrees; over 180 when bent toward the belly. */
function backAngle(before: PoolXY, joint: PoolXY, after: PoolXY): number {
  const a = Math.atan2(before.y - joint.y, before.x - joint.x);
  const b = Math.atan2(after.y - joint.y, after.x - joint.x);
  return (((((b - a) * 180) / Math.PI) % 360) + 360) % 360;
}

it('a streamlined body is one body length from fingertip to toe', () => {
  const { neck, ...chain } = lengths;
  expect(Object.values(chain).reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
  expect(neck).toBeGreaterThan(0);
  expect(fromToe.hip).toBeCloseTo(lengths.foot + lengths.shank + lengths.thigh, 12);
  expect(fromToe.shoulder).toBeCloseTo(fromToe.hip + lengths.trunk, 12);
});

it('the kick goes from top to bottom exactly on its shares, and never beyond', () => {
  const shape = kickShape([
    { top: 0.05, bottom: 0.25, size: 1 },
    { top: 0.5, bottom: 0.7, size: 0.8 },
  ]);
  expect([0.05, 0.25, 0.5, 0.7, 1.05].map(shape).map((each) => Number(each.toFixed(9)))).toEqual([
    1, -1, 0.6, -1, 1,
  ]);
  for (const share of instants(997, 3)) expect(Math.abs(shape(share))).toBeLessThanOrEqual(1 + 1e-12);
});

it('the arm keeps its bones through the whole stroke, without jumps', () => {
  let before = strokingArm(0);
  for (const share of instants(2000, 1)) {
    const { elbow, wrist, fingertip } = strokingArm(share);
    expect(Math.hypot(elbow.x, elbow.y, elbow.z)).toBeCloseTo(lengths.upperArm, 9);
    expect(Math.hypot(wrist.x - elbow.x, wrist.y - elbow.y, wrist.z - elbow.z)).toBeCloseTo(
      lengths.forearm,
      9,
    );
    expect(Math.hypot(fingertip.x - wrist.x, fingertip.y - wrist.y, fingertip.z - wrist.z)).toBeCloseTo(
      lengths.hand,
      9,
    );
    // at 2000 instants a stroke a hand that moves less than ten body lengths a stroke moves under half a percent
    expect(far(before.elbow, elbow)).toBeLessThan(0.005);
    expect(far(before.fingertip, fingertip)).toBeLessThan(0.005);
    before = { elbow, wrist, fingertip };
  }
});

describe.each(scenarios.map((each) => [each.id, each] as const))('%s', (_id, scenario) => {
  const { technique } = scenario;
  const bodyAt = swimmerModel(technique);
  const length = scenario.pictures / scenario.captureRate;
  const belly = technique.onBack ? -1 : 1;

  it('keeps its bones and bends its knees only the way knees bend', () => {
    for (const time of instants(800, length)) {
      const body = bodyAt(time);
      expect(far(body.shoulder, body.hip)).toBeCloseTo(lengths.trunk * technique.size, 9);
      expect(far(body.hip, body.knee)).toBeCloseTo(lengths.thigh * technique.size, 9);
      expect(far(body.knee, body.ankle)).toBeCloseTo(lengths.shank * technique.size, 9);
      expect(far(body.ankle, body.toe)).toBeCloseTo(lengths.foot * technique.size, 9);
      const knee = backAngle(body.hip, body.knee, body.ankle);
      const bent = belly > 0 ? knee : 360 - knee;
      expect(bent).toBeGreaterThan(95);
      expect(bent).toBeLessThan(187);
    }
  });

  it('has one wave run down the legs at its stated speed', () => {
    if (technique.kind !== 'kick') return;
    for (const joint of ['hip', 'knee', 'ankle'] as const) {
      const rise = (body: Body, of: 'hip' | 'knee' | 'ankle' | 'toe'): number => body[of].y;
      const middle = (of: 'hip' | 'knee' | 'ankle' | 'toe'): number => {
        const heights = instants(4000, technique.period).map((time) => rise(bodyAt(time), of));
        return (Math.max(...heights) + Math.min(...heights)) / 2;
      };
      const [base, foot] = [middle(joint), middle('toe')];
      for (const time of instants(50, 2 * technique.period))
        expect(rise(bodyAt(time), joint) - base).toBeCloseTo(
          swingGain[joint] * (rise(bodyAt(time + waveLead(technique, joint)), 'toe') - foot),
          4,
        );
    }
  });

  it('goes forward at its mean speed over whole cycles, with its stated variation', () => {
    const cycles = 2;
    const many = 4000;
    const step = (cycles * technique.period) / many;
    const speeds = Array.from(
      { length: many },
      (_, i) => (bodyAt((i + 0.5) * step).hip.x - bodyAt((i - 0.5) * step).hip.x) / step,
    );
    const mean = speeds.reduce((sum, each) => sum + each, 0) / many;
    const variance = speeds.reduce((sum, each) => sum + (each - mean) ** 2, 0) / many;
    expect(mean).toBeCloseTo(technique.speed, 4);
    const stated = Math.sqrt(technique.speedWave.reduce((sum, { swing }) => sum + swing ** 2 / 2, 0));
    expect(Math.sqrt(variance) / mean).toBeCloseTo(stated, 3);
  });

  it('turns its toes when its kicks say, and enters and leaves the water at the drawn surface', () => {
    const events = trueEvents(bodyAt, length, technique.kind);
    const shares = technique.kicks.flatMap(({ top, bottom }) => [top, bottom]);
    const turns = events.filter((each) => each.kind.startsWith('kick-'));
    expect(turns.length).toBeGreaterThanOrEqual(4);
    for (const { time } of turns) {
      const cycle = (time - technique.startTime) / technique.period;
      const off = shares.map((share) => Math.abs(cycle - share - Math.round(cycle - share)));
      // a turn is found where the slope over 0.2 ms changes sign, so to well within 0.1 ms
      expect(Math.min(...off) * technique.period).toBeLessThan(1e-4);
    }
    for (const { kind, time } of events) {
      const { fingertip } = bodyAt(time);
      if (kind === 'entry' || kind === 'exit')
        expect(fingertip.y).toBeCloseTo(waterSurface(fingertip.x, time), 7);
    }
    const hands = new Set(['entry', 'catch', 'shoulder', 'navel', 'exit']);
    const order = events.filter((each) => hands.has(each.kind)).map((each) => each.kind);
    order.slice(1).forEach((kind, i) => {
      const after = { entry: 'catch', catch: 'shoulder', shoulder: 'navel', navel: 'exit', exit: 'entry' };
      expect(kind).toBe(after[order[i] as keyof typeof after]);
    });
  });
});
