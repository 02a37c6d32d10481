import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitDesign, fitWave } from '#core/signal/fit-wave';
import { periodSlope } from '#core/signal/period-slope';
import { waveDesign } from '#core/signal/wave-design';
import { waveExtreme, wavePeakToPeak } from '#core/signal/wave-extremes';
import { waveHarmonics, wrap } from '#core/signal/wave-harmonics';
import { waveValue } from '#core/signal/wave-value';
import reference from '../../reference/trace_filter.json';
import { seededNormal } from '../measures/body/seeded-normal';

const unevenTimes = (count: number, span: number): number[] =>
  Array.from({ length: count }, (_, i) => (span * (i + 0.4 * Math.sin(7 * i))) / count);

describe('least-squares wave on uneven samples', () => {
  it('agrees with an independent least-squares solver', () => {
    const { t, y, period, coefficients, covariance, residualSd } = reference.wave;
    const fit = fitWave(t, y, { period, harmonics: 3, slope: true });
    expect(fit).not.toBeNull();
    coefficients.forEach((c, i) => {
      expect(fit?.coefficients[i]).toBeCloseTo(c, 10);
    });
    covariance.forEach((c, i) => {
      expect(fit?.unitCovariance[i]).toBeCloseTo(c, 10);
    });
    expect(fit?.residualSd).toBeCloseTo(residualSd, 10);
  });

  it('gives the stated amplitudes, phases and power shares', () => {
    // y = 0.06 cos(ωt − 0.5) + 0.03 cos(2ωt − 1.0) → C 0.0600, 0.0300; φ 0.500, 1.000; shares 80.0 / 20.0 %
    const period = 1.2;
    const omega = (2 * Math.PI) / period;
    const times = unevenTimes(37, 2 * period);
    const samples = times.map(
      (t) => 4 - 0.3 * t + 0.06 * Math.cos(omega * t - 0.5) + 0.03 * Math.cos(2 * omega * t - 1),
    );
    const fit = fitWave(times, samples, { period, harmonics: 3, slope: true });
    expect(fit).not.toBeNull();
    if (!fit) return;
    const [first, second, third] = waveHarmonics(fit, 0, 0);
    expect(first?.amplitude).toBeCloseTo(0.06, 10);
    expect(second?.amplitude).toBeCloseTo(0.03, 10);
    expect(third?.amplitude).toBeCloseTo(0, 10);
    expect(first?.phase).toBeCloseTo(0.5, 9);
    expect(second?.phase).toBeCloseTo(1, 9);
    const total = (first?.power ?? 0) + (second?.power ?? 0);
    expect((100 * (first?.power ?? 0)) / total).toBeCloseTo(80, 8);
    expect((100 * (second?.power ?? 0)) / total).toBeCloseTo(20, 8);
  });

  it('finds the extremes of value and speed of a known wave', () => {
    const times = unevenTimes(40, 2);
    const fit = fitWave(
      times,
      times.map((t) => 1 + 2 * t + 0.3 * Math.cos(2 * Math.PI * t)),
      { period: 1, harmonics: 2, slope: true },
    );
    expect(fit).not.toBeNull();
    if (!fit) return;
    expect(wavePeakToPeak(fit, 0)?.value).toBeCloseTo(0.6, 9);
    expect(waveExtreme(fit, 1, 1, true)?.value).toBeCloseTo(2 + 0.6 * Math.PI, 8);
    expect(waveExtreme(fit, -1, 1, true)?.value).toBeCloseTo(2 - 0.6 * Math.PI, 8);
    expect(waveValue(fit, 0.25, 1, false)).toBeCloseTo(-0.6 * Math.PI, 8);
    expect(waveValue(fit, 0.7, 2)).toBeCloseTo(-0.3 * (2 * Math.PI) ** 2 * Math.cos(2 * Math.PI * 0.7), 6);
  });

  it('does not depend on when the clock starts', () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (shift) => {
        const { t, y, period } = reference.wave;
        const model = { period, harmonics: 3, slope: true };
        const here = fitWave(t, y, model);
        const there = fitWave(
          t.map((v) => v + shift),
          y,
          model,
        );
        expect(here && there).not.toBeNull();
        if (!here || !there) return;
        expect(wavePeakToPeak(there, 1e-4)?.value).toBeCloseTo(wavePeakToPeak(here, 1e-4)?.value ?? 0, 7);
      }),
      { numRuns: 50 },
    );
  });

  it('is null for too few samples, a bad period, or samples all at one place of the cycle', () => {
    expect(fitWave([0, 1], [0, 1], { period: 1, harmonics: 1, slope: false })).toBeNull();
    expect(fitWave([0, 0.2, 0.4, 0.6], [0, 1, 0, 1], { period: 0, harmonics: 1, slope: false })).toBeNull();
    const tops = Array.from({ length: 12 }, (_, i) => i);
    expect(
      fitWave(
        tops,
        tops.map(() => 1),
        { period: 1, harmonics: 1, slope: false },
      ),
    ).toBeNull();
    const same = new Array<number>(9).fill(2);
    expect(fitWave(same, same, { period: 1, harmonics: 1, slope: true })).toBeNull();
  });

  it('has no lift from noise left in peak-to-peak and amplitude, and spreads as it says', () => {
    const normal = seededNormal(5);
    const sd = 0.02;
    const times = unevenTimes(14, 1);
    const truth = times.map((t) => 0.1 * Math.cos(2 * Math.PI * t) + 0.02 * Math.cos(4 * Math.PI * t));
    const model = { period: 1, harmonics: 2, slope: false };
    const exact = fitWave(times, truth, model);
    const expected = (exact && wavePeakToPeak(exact, 0)?.value) ?? Number.NaN;
    const runs = 4000;
    let sum = 0;
    let square = 0;
    let told = 0;
    let secondPower = 0;
    for (let i = 0; i < runs; i++) {
      const fit = fitWave(
        times,
        truth.map((y) => y + sd * normal()),
        model,
      );
      const estimate = fit && wavePeakToPeak(fit, sd * sd);
      expect(estimate).not.toBeNull();
      if (!fit || !estimate) return;
      sum += estimate.value;
      square += estimate.value ** 2;
      told += estimate.variance;
      secondPower += waveHarmonics(fit, sd * sd, 0)[1]?.power ?? 0;
    }
    const mean = sum / runs;
    const spread = Math.sqrt(square / runs - mean * mean);
    // under a tenth of the 95 % interval's width
    expect(Math.abs(mean - expected)).toBeLessThan(0.1 * 2 * 1.96 * spread);
    expect(Math.sqrt(told / runs) / spread).toBeGreaterThan(0.93);
    expect(Math.sqrt(told / runs) / spread).toBeLessThan(1.07);
    expect(secondPower / runs).toBeCloseTo(0.0004, 4);
  });

  it('tells how far each coefficient moves with the period, within what a small change leaves to the second order', () => {
    const times = unevenTimes(40, 1.1);
    const heights = times.map((t) => 0.3 * t + 0.1 * Math.cos(6.2 * t) + 0.03 * Math.cos(12.4 * t - 1));
    const at = (period: number) => {
      const design = waveDesign(times, { period, harmonics: 3, slope: true });
      return design && { design, fit: fitDesign(design, heights) };
    };
    const period = (2 * Math.PI) / 6.2;
    const [here, later, earlier] = [at(period), at(period + 1e-4), at(period - 1e-4)];
    if (!here || !later || !earlier) throw new Error('no design');
    const slope = periodSlope(here.design, here.fit);
    slope.forEach((each, i) => {
      const step = ((later.fit.coefficients[i] ?? 0) - (earlier.fit.coefficients[i] ?? 0)) / 2e-4;
      expect(each).toBeCloseTo(step, 5);
    });
    // a period off by a tenth makes the first harmonic leak into the second by a tenth of its size or so
    expect(Math.hypot(slope[4] ?? 0, slope[5] ?? 0) * period).toBeGreaterThan(0.05);
  });

  it('wraps angles into one turn', () => {
    expect(wrap(Math.PI)).toBeCloseTo(Math.PI, 12);
    expect(wrap(-Math.PI)).toBeCloseTo(Math.PI, 12);
    expect(wrap(7)).toBeCloseTo(7 - 2 * Math.PI, 12);
    expect(wrap(-20)).toBeCloseTo(-20 + 6 * Math.PI, 12);
  });
});
