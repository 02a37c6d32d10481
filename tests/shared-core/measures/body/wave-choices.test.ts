import { describe, expect, it } from 'vitest';
import { swimmerBounds } from '#core/measures/body/wave/kick-crests';
import { froudeEfficiency } from '#core/measures/products/propulsion';
import { bodyTruths } from './body-truths';
import { computed, kickOmega, markedSwim, noNoise, plainKick, readAll, truePlace } from './model-swim';
import { readAll as readWhole } from '../marked-whole';

const fine = { ...noNoise, landmarkSd: 0.05, eventSd: 1e-4, scenePointSd: 0.05, offPlaneSd: 0 };
const model = { ...plainKick, framesPerSecond: 120, tilt: 0, uneven: 0 };

describe('the speed of the wave', () => {
  const input = markedSwim(model, fine);
  const { context, readings } = readAll(input);

  it('runs along travel, as its definition says, and the efficiency is made from that', () => {
    const along = kickOmega(model) / model.waveNumber;
    const wave = computed(readings, 'body-wave-speed');
    expect(Math.abs(wave.value / along - 1)).toBeLessThan(2e-3);
    expect(Math.abs(computed(readings, 'wave-speed-knee-ankle').value / along - 1)).toBeLessThan(0.01);
    const froude = readWhole(input).find(({ id }) => id === 'froude');
    if (froude?.status !== 'computed') throw new Error('an efficiency was expected');
    expect(froude.value).toBeCloseTo(froudeEfficiency(model.speed, along), 3);
    expect(bodyTruths(model, context).get('body-wave-speed')).toBeCloseTo(along, 6);
  });

  it('along the bent body lies in the interval of this swimmer', () => {
    const times = Array.from({ length: 400 }, (_, i) => 0.3 + (i / 400) * model.period);
    const links = [
      ['shoulder', 'hip'],
      ['hip', 'knee'],
      ['knee', 'ankle'],
      ['ankle', 'toe'],
    ] as const;
    const length = (way: (dx: number, dy: number) => number): number =>
      links.reduce((sum, [a, b]) => {
        const each = times.map((t) => {
          const [p, q] = [truePlace(model, a, t), truePlace(model, b, t)];
          return way(p.x - q.x, p.y - q.y);
        });
        return sum + each.reduce((s, v) => s + v, 0) / each.length;
      }, 0);
    const bent = length(Math.hypot) / length((dx) => dx);
    expect(bent).toBeGreaterThan(1.01);
    const { value, otherInterval } = computed(readings, 'body-wave-speed');
    expect(otherInterval?.question).toBe('this-swimmer');
    expect(value).toBeGreaterThan(otherInterval?.low ?? Number.NaN);
    expect(value * (1 + 0.9 * (bent - 1))).toBeLessThan(otherInterval?.high ?? Number.NaN);
  });
});

describe('a lag', () => {
  /** A toe whose quick half of the kick comes at another time than the ankle's: its second harmonic runs on its own. */
  const bend = (t: number): number => 0.06 * Math.cos(2 * kickOmega(model) * t + 2.1);

  it('of this swimmer is wide enough for the one by the tops alone and the one by the bottoms alone', () => {
    const plain = markedSwim(model, fine);
    const { starts } = plain.clock.table;
    const swim = {
      ...plain.swim,
      postures: plain.swim.postures.map((posture) => {
        const toe = posture.points.toe;
        if (!toe) return posture;
        const up = bend((starts[posture.frame] ?? 0) / 90_000) * model.pixelsPerMetre;
        return { ...posture, points: { ...posture.points, toe: { x: toe.x, y: toe.y - up } } };
      }),
    };
    const lag = computed(readAll({ ...plain, swim }).readings, 'phase-lag-ankle-toe');
    // tops and bottoms of the true movements, by fine steps over one kick
    const at = (name: 'ankle' | 'toe', sign: 1 | -1): number => {
      let [best, time] = [-Infinity, 0];
      for (let t = 1; t < 1 + model.period; t += 1e-4) {
        const drift = model.driftUp * t;
        const y = sign * (truePlace(model, name, t).y - drift + (name === 'toe' ? bend(t) : 0));
        if (y > best) [best, time] = [y, t];
      }
      return time;
    };
    const turned = (sign: 1 | -1): number => {
      const degrees = (360 * (at('toe', sign) - at('ankle', sign))) / model.period;
      return degrees - 360 * Math.round((degrees - lag.value) / 360);
    };
    const [top, bottom] = [turned(1), turned(-1)];
    expect(Math.abs(top - bottom)).toBeGreaterThan(5);
    const { low, high } = lag.otherInterval ?? { low: Number.NaN, high: Number.NaN };
    expect(lag.otherInterval?.question).toBe('this-swimmer');
    for (const each of [top, bottom]) {
      expect(each).toBeGreaterThan(low - 0.5);
      expect(each).toBeLessThan(high + 0.5);
    }
    // and the marks tell the kick's own harmonic far better than that
    expect(lag.interval.high - lag.interval.low).toBeLessThan((high - low) / 3);
  });

  it('spreads by Student’s t over the lags of single cycles, whichever side of half a turn they are on', () => {
    const crests = (phases: readonly number[]) => ({
      perCycle: phases,
      byTop: phases[0] ?? 0,
      byBottom: phases[0] ?? 0,
    });
    const still = crests([3, -3, 0]);
    const behind = crests([3.1, -2.9, 0.1].map((each) => each + 2 * Math.PI));
    const found = swimmerBounds([still, behind], [0, 0.1], ([, lag = 0]) => lag);
    expect(found?.low).toBeCloseTo(0.1, 9);
    expect(found?.high).toBeCloseTo(0.1, 9);
    // lags 0.1, 0.2, 0.3: SD 0.1, t of two degrees of freedom 4.303
    const spread = swimmerBounds(
      [crests([0, 0, 0]), crests([0.1, 0.2, 0.3])],
      [0, 0.2],
      ([, lag = 0]) => lag,
    );
    expect((spread?.high ?? 0) - (spread?.low ?? 0)).toBeCloseTo((2 * 4.3027 * 0.1) / Math.sqrt(3), 3);
    expect(swimmerBounds([crests([1]), crests([1])], [0, 0], ([, lag = 0]) => lag)).toBeNull();
    expect(swimmerBounds([null, crests([1, 2])], [0, 0], ([, lag = 0]) => lag)).toBeNull();
  });
});
