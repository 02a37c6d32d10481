import { describe, expect, it } from 'vitest';
import { centralDifference, centralDifferenceSd } from '#core/signal/central-difference';
import { naturalSpline } from '#core/signal/cubic-spline';
import { fitLine } from '#core/signal/fit-line';
import { findPeaks } from '#core/signal/peaks';
import { medianRate, resampleUniform } from '#core/signal/resample-uniform';
import { residualAnalysis } from '#core/signal/residual-analysis';
import { seededNormal } from '../measures/body/seeded-normal';
import reference from '../../reference/trace_filter.json';

describe('resampling', () => {
  it('agrees with an independent natural spline', () => {
    const { t, y, at, value } = reference.spline;
    const curve = naturalSpline(t, y);
    at.forEach((time, i) => {
      expect(curve(time)).toBeCloseTo(value[i] ?? Number.NaN, 10);
    });
  });

  it('keeps even samples, first to last', () => {
    const samples = [3, 1, 4, 1, 5, 9, 2, 6];
    const times = samples.map((_, i) => 2 + i / 30);
    const even = resampleUniform(times, samples);
    expect(even.sampleHz).toBeCloseTo(30, 9);
    expect(even.samples).toHaveLength(8);
    even.samples.forEach((v, i) => {
      expect(v).toBeCloseTo(samples[i] ?? Number.NaN, 6);
    });
  });

  it('follows a smooth curve through uneven timestamps without leaving their span', () => {
    const times = Array.from({ length: 60 }, (_, i) => i / 50 + (i % 3) * 0.004);
    const even = resampleUniform(
      times,
      times.map((t) => Math.sin(6 * t)),
      100,
    );
    const last = even.startTime + (even.samples.length - 1) / 100;
    expect(last).toBeLessThanOrEqual((times.at(-1) ?? 0) + 1e-9);
    even.samples.forEach((v, i) => {
      expect(Math.abs(v - Math.sin(6 * (even.startTime + i / 100)))).toBeLessThan(2e-3);
    });
  });

  it('takes none, one and two samples, and throws when times stand still', () => {
    expect(resampleUniform([], []).samples).toEqual([]);
    expect(resampleUniform([1], [5]).samples).toEqual([5]);
    expect(medianRate([1])).toBe(1);
    expect(naturalSpline([0, 1], [0, 2])(0.25)).toBeCloseTo(0.5, 12);
    expect(() => naturalSpline([0, 0], [0, 2])).toThrow(RangeError);
  });
});

describe('straight lines', () => {
  it('fits a line and says how sure the slope is', () => {
    const line = fitLine([0, 1, 2, 3], [1, 3, 5, 7]);
    expect(line?.slope).toBeCloseTo(2, 12);
    expect(line?.intercept).toBeCloseTo(1, 12);
    expect(line?.slopeVariance).toBeCloseTo(1 / 5, 12);
  });
  it('pays a weighted point its due', () => {
    const line = fitLine([0, 1, 2], [0, 1, 8], [1, 1, 1e-9]);
    expect(line?.slope).toBeCloseTo(1, 6);
  });
  it('is null for points at one place', () => {
    expect(fitLine([2, 2, 2], [1, 2, 3])).toBeNull();
    expect(fitLine([2], [1])).toBeNull();
  });
});

describe('peaks', () => {
  it('agrees with an independent finder, with the same prominences', () => {
    const { x, index, prominence, minProminence } = reference.peaks;
    const found = findPeaks(x, { minProminence, minGap: 1 });
    expect(found.map((p) => p.index)).toEqual(index);
    found.forEach((p, i) => {
      expect(p.prominence).toBeCloseTo(prominence[i] ?? Number.NaN, 12);
    });
  });
  it('counts a flat top once and ends never', () => {
    expect(findPeaks([5, 0, 2, 2, 2, 0, 9], { minProminence: 0, minGap: 1 }).map((p) => p.index)).toEqual([
      3,
    ]);
    expect(findPeaks([], { minProminence: 0, minGap: 1 })).toEqual([]);
  });
  it('keeps the more prominent of two that are too close', () => {
    expect(findPeaks([0, 3, 1, 5, 0], { minProminence: 0.5, minGap: 3 }).map((p) => p.index)).toEqual([3]);
  });
});

describe('cut-off by residual analysis', () => {
  it('finds the noise level and a cut-off between signal and noise', () => {
    const normal = seededNormal(11);
    const rate = 100;
    const noise = 0.004;
    const samples = Array.from({ length: 600 }, (_, i) => {
      const t = i / rate;
      return 0.25 * Math.cos(2 * Math.PI * 2 * t) + 0.03 * Math.cos(2 * Math.PI * 4 * t) + noise * normal();
    });
    const found = residualAnalysis(samples, rate);
    expect(found).not.toBeNull();
    expect(found?.noise).toBeGreaterThan(0.8 * noise);
    expect(found?.noise).toBeLessThan(1.2 * noise);
    expect(found?.cutoffHz).toBeGreaterThan(4);
    expect(found?.cutoffHz).toBeLessThan(14);
  });
  it('is null for too few samples', () => {
    expect(residualAnalysis([1, 2, 3], 50)).toBeNull();
  });
});

describe('speed by central differences', () => {
  it('has noise σ·fs/√2: 5 mm at 50/s make 0.177 m/s', () => {
    // computed: 0.005 · 50 / √2
    expect(centralDifferenceSd(0.005, 50)).toBeCloseTo(0.177, 3);
    const normal = seededNormal(5);
    const still = Array.from({ length: 20_000 }, () => 0.005 * normal());
    const speeds = still.flatMap((_, at) => centralDifference(still, at, 50) ?? []);
    expect(speeds).toHaveLength(still.length - 2);
    const square = speeds.reduce((sum, v) => sum + v * v, 0) / speeds.length;
    // 20,000 draws tell a standard deviation within one part in a hundred
    expect(Math.sqrt(square) / 0.177).toBeCloseTo(1, 1);
  });
  it('is exact on a parabola, and none at the ends', () => {
    const fall = [0, 1, 4, 9, 16];
    expect(centralDifference(fall, 2, 10)).toBe(40);
    expect(centralDifference(fall, 0, 10)).toBeNull();
    expect(centralDifference(fall, 4, 10)).toBeNull();
  });
});
