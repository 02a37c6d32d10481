import { describe, expect, it } from 'vitest';
import { directionAngle, heightAboveLine, turnedAngle } from '#core/measures/body/points/angles';
import {
  centreOfMassFromSegments,
  centreWeights,
  segmentSum,
} from '#core/measures/body/context/centre-of-mass';
import { waveSpeed } from '#core/measures/body/wave/phase-lag';
import { meanOfLargest } from '#core/measures/body/posture/largest-of-noisy';
import { studentQuantile975 } from '#core/uncertainty/student-quantile';
import reference from '../../../reference/quantiles.json';

describe('centre of mass', () => {
  // straight line, metres from the toe; computed from the published table (de Leva 1996, Table 4)
  const line = {
    head: [1.92, 1.68],
    trunk: [1.6, 1.08],
    upperArm: [1.6, 1.88],
    forearm: [1.88, 2.15],
    hand: [2.15, 2.34],
    thigh: [1.08, 0.65],
    shank: [0.65, 0.21],
    foot: [0.26, 0],
  } as const;
  it('lies at the check values of a straight line', () => {
    expect(centreOfMassFromSegments(line, 'male')).toBeCloseTo(1.20985, 5);
    expect(centreOfMassFromSegments(line, 'female')).toBeCloseTo(1.20939, 5);
  });
  it('is of segments that sum to 100.00 % of a man and 99.99 % of a woman in the printed table', () => {
    // de Leva 1996, J Biomech 29:1223–1230, Table 4: sums computed
    expect(segmentSum('male')).toBeCloseTo(100, 10);
    expect(segmentSum('female')).toBeCloseTo(99.99, 10);
  });
  it('weighs the nine landmarks to a whole, the trunk the most', () => {
    for (const sex of ['male', 'female', 'mean'] as const) {
      const weights = centreWeights(sex);
      expect(Object.values(weights).reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 12);
      expect(Math.max(...Object.values(weights))).toBe(Math.max(weights.hip ?? 0, weights.shoulder ?? 0));
    }
  });
  it('moves with the whole body', () => {
    const shifted = Object.fromEntries(
      Object.entries(line).map(([name, ends]) => [name, ends.map((v) => v + 3)]),
    ) as unknown as typeof line;
    expect(centreOfMassFromSegments(shifted, 'male') - centreOfMassFromSegments(line, 'male')).toBeCloseTo(
      3,
      12,
    );
  });
});

describe('the speed of a wave along the body', () => {
  it('is 4.945 m/s over 0.85 m with a lag of 1.8 at the second harmonic of 1.2 s', () => {
    // computed: c = d · 2π(k/T) / Δφ = 0.85 · 2π · (2/1.2) / 1.8
    expect(waveSpeed(0.85, 1.8, 1.2, 2)).toBeCloseTo(4.945, 3);
  });
  it('halves with twice the lag or the period, and runs back where the lag is turned round', () => {
    expect(waveSpeed(0.85, 3.6, 1.2, 2)).toBeCloseTo(waveSpeed(0.85, 1.8, 2.4, 2), 12);
    expect(waveSpeed(0.85, -1.8, 1.2, 2)).toBe(-waveSpeed(0.85, 1.8, 1.2, 2));
  });
});

describe('angles', () => {
  it('read straight as 180 and do not fold there', () => {
    const o = { x: 0, y: 0 };
    expect(turnedAngle({ x: -1, y: 0 }, o, { x: 1, y: 0 }, 1)).toBeCloseTo(180, 10);
    const over = turnedAngle({ x: 1, y: 0 }, o, { x: -1, y: -0.1 }, 1) ?? 0;
    const under = turnedAngle({ x: 1, y: 0 }, o, { x: -1, y: 0.1 }, 1) ?? 0;
    expect(over - 180).toBeCloseTo(180 - under, 10);
    expect(over).toBeGreaterThan(180);
    expect(turnedAngle({ x: 1, y: 0 }, o, { x: 0, y: 1 }, 1)).toBeCloseTo(90, 10);
    expect(turnedAngle(o, o, { x: 0, y: 1 }, 1)).toBeNull();
  });
  it('read direction against travel, and nothing from a point to itself', () => {
    expect(directionAngle({ x: 0, y: 0 }, { x: 1, y: 1 })).toBeCloseTo(45, 10);
    expect(directionAngle({ x: 2, y: 2 }, { x: 2, y: 2 })).toBeNull();
  });
  it('read height above a line whichever way it is drawn', () => {
    const a = { x: 0, y: 0 };
    const b = { x: 2, y: 0 };
    expect(heightAboveLine({ x: 1, y: 0.3 }, a, b)).toBeCloseTo(0.3, 12);
    expect(heightAboveLine({ x: 1, y: 0.3 }, b, a)).toBeCloseTo(0.3, 12);
    expect(heightAboveLine({ x: 1, y: 0.3 }, a, a)).toBeNull();
  });
});

describe('normal and Student figures', () => {
  it('agree with an independent implementation', () => {
    for (const [n, value] of reference.student975) {
      expect(Math.abs(studentQuantile975(n ?? 0) - (value ?? 0)), `${n} degrees of freedom`).toBeLessThan(
        5e-4,
      );
    }
    expect(studentQuantile975(0)).toBe(Infinity);
  });
  it('give the mean of the largest of noisy values', () => {
    for (const { values, sd, mean } of reference.largest) {
      // Clark's pairwise form is exact for two and close for more
      expect(Math.abs(meanOfLargest(values, sd) - mean)).toBeLessThan(values.length === 2 ? 1e-6 : 0.02 * sd);
    }
    expect(meanOfLargest([3, 1], 0)).toBe(3);
    expect(meanOfLargest([0, 0], 1)).toBeCloseTo(1 / Math.sqrt(Math.PI), 6);
  });
});
