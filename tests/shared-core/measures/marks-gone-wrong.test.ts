import { describe, expect, it } from 'vitest';
import type { Reading } from '#core/measures/reading';
import { reasonWords } from '#core/measures/reason-words';
import { type EventMark, plainMark } from '#core/swim-file/swim-schema';
import { drawBody } from './body/drawn-body';
import { plainKick } from './body/model-swim';
import { marked, readAll, withSwim } from './marked-whole';

const computedOf = (readings: readonly Reading[], id: string) => {
  const found = readings.find((each) => each.id === id);
  if (found?.status !== 'computed') throw new Error(`${id}: ${JSON.stringify(found)}`);
  return found;
};

const kicked = marked({ ...plainKick, underwater: true }, 21);

describe('what a reading says it needs', () => {
  it('is never less than it has', () => {
    const swims = [1, 2, 3].map((seed) => drawBody(seed).input);
    let counted = 0;
    for (const input of swims)
      for (const kind of ['entry', 'kick-top', 'kick-bottom', null] as const)
        for (const every of [1, 2]) {
          const events = input.swim.events.filter((each, i) => each.kind !== kind && i % every === 0);
          const postures = input.swim.postures.filter((_, i) => i % every === 0);
          for (const reading of readAll(withSwim(input, { events, postures })))
            if (reading.status === 'missing')
              for (const reason of reading.reasons)
                if ('have' in reason) {
                  counted += 1;
                  expect(reason.have, `${reading.id}: ${reasonWords(reason)}`).toBeLessThan(reason.need);
                }
        }
    expect(counted).toBeGreaterThan(100);
  });

  it('names the turns of the kick, not body lines there are plenty of', () => {
    const reasons = (change: Parameters<typeof withSwim>[1]): readonly string[] => {
      const found = readAll(withSwim(kicked, change)).find(({ id }) => id === 'kick-amplitude-toe');
      return found?.status === 'missing' ? found.reasons.map(reasonWords) : [];
    };
    const entries = [40, 80].map(
      (frame): EventMark => ({ ...plainMark, id: `h${frame}`, kind: 'entry', frame }),
    );
    const without = (kind: EventMark['kind']) => [
      ...kicked.swim.events.filter((each) => each.kind !== kind),
      ...entries,
    ];
    expect(reasons({ events: without('kick-bottom') })).toEqual(['Needs 1 kick bottom mark']);
    expect(reasons({ events: without('kick-top') })).toEqual(['Needs 1 kick top mark']);
    const turns = kicked.swim.events.map(({ frame }) => frame);
    const apart = kicked.swim.postures.filter(({ frame }) =>
      turns.every((turn) => Math.abs(frame - turn) > 4),
    );
    expect(apart.length).toBeGreaterThan(50);
    expect(reasons({ postures: apart, events: [...kicked.swim.events, ...entries] })[0]).toContain(
      'on the frames of each kick',
    );
  });
});

describe('shares and angles', () => {
  it('stay within a whole and a whole turn', () => {
    for (let seed = 1; seed <= 12; seed++)
      for (const reading of readAll(drawBody(seed).input)) {
        if (reading.status !== 'computed') continue;
        const { value, unit, interval } = reading;
        if (reading.id.startsWith('harmonic-share'))
          expect(Math.max(value, interval.high), reading.id).toBeLessThanOrEqual(100);
        if (reading.id.startsWith('harmonic-phase') || reading.id.startsWith('phase-lag'))
          expect(Math.abs(value), reading.id).toBeLessThanOrEqual(180);
        if (unit === '°')
          expect(interval.high - interval.low, reading.id).toBeLessThanOrEqual(360 * (1 + 1e-9));
      }
  });
});

describe('marks after the last picture', () => {
  it('are left out, and said so', () => {
    const count = kicked.clock.table.starts.length;
    const late = [count, count + 7].map(
      (frame): EventMark => ({ ...plainMark, id: `late${frame}`, kind: 'kick-top', frame }),
    );
    const posture = { frame: count + 3, points: { hip: { x: 10, y: 10 } }, hidden: [] };
    const swim = withSwim(kicked, {
      events: [...kicked.swim.events, ...late],
      postures: [...kicked.swim.postures, posture],
    });
    const before = readAll(kicked);
    for (const reading of readAll(swim)) {
      const was = before.find(({ id }) => id === reading.id);
      expect(reading.status, reading.id).toBe(was?.status);
      if (reading.status !== 'computed' || was?.status !== 'computed') continue;
      expect(reading.value, reading.id).toBe(was.value);
      expect(reading.doubts, reading.id).toContainEqual({
        code: 'marks-past-end',
        frames: [count, count + 3, count + 7],
      });
    }
  });
});

describe('distance marks', () => {
  const at = (frame: number, metres: number): EventMark => ({
    ...plainMark,
    id: `d${frame}`,
    kind: 'distance-mark',
    frame,
    metres,
  });
  const speed = (...marks: EventMark[]) =>
    computedOf(readAll(withSwim(kicked, { events: [...kicked.swim.events, ...marks] })), 'speed-marks');

  it('whose metres do not grow are doubted, with the frames to look at', () => {
    expect(speed(at(20, 5), at(60, 6), at(100, 7)).doubts).toEqual([]);
    expect(speed(at(20, 7), at(60, 6), at(100, 5)).doubts).toContainEqual({
      code: 'distances-run-backward',
      frames: [20, 60, 100],
    });
    expect(speed(at(20, 5), at(60, 4), at(100, 7)).doubts).toHaveLength(1);
  });
});
