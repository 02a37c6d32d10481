import { describe, expect, it } from 'vitest';
import { butterworthCoefficients, runUpLength, zeroLagLowPass } from '#core/signal/butterworth';
import reference from '../../reference/trace_filter.json';

const measure = (samples: readonly number[], hz: number, rate: number): number => {
  let c = 0;
  let s = 0;
  samples.forEach((y, i) => {
    c += y * Math.cos((2 * Math.PI * hz * i) / rate);
    s += y * Math.sin((2 * Math.PI * hz * i) / rate);
  });
  return (2 / samples.length) * Math.hypot(c, s);
};

describe('Winter low-pass', () => {
  // check values computed from the stated formula, six decimals
  it.each([
    [50, 0.125452, 0.779216, -0.281026],
    [60, 0.094447, 0.962641, -0.340428],
    [100, 0.040595, 1.354749, -0.517128],
  ])('has the stated coefficients at 6 Hz and %d/s', (rate, a0, b1, b2) => {
    const c = butterworthCoefficients(6, rate);
    expect(c.a0).toBeCloseTo(a0, 6);
    expect(c.a1).toBeCloseTo(2 * a0, 5);
    expect(c.b1).toBeCloseTo(b1, 6);
    expect(c.b2).toBeCloseTo(b2, 6);
  });

  it('corrects the corner by 0.80224 for two passes', () => {
    expect((2 ** 0.5 - 1) ** 0.25).toBeCloseTo(0.80224, 5);
  });

  it('agrees with the independent design of the same filter', () => {
    for (const { rate, cutoff, a, b } of reference.filters) {
      const c = butterworthCoefficients(cutoff, rate);
      [c.a0, c.a1, c.a2].forEach((v, i) => {
        expect(v).toBeCloseTo(b[i] ?? Number.NaN, 12);
      });
      expect(-c.b1).toBeCloseTo(a[1] ?? Number.NaN, 12);
      expect(-c.b2).toBeCloseTo(a[2] ?? Number.NaN, 12);
    }
  });

  it('agrees with the independent forward and backward filter, sample by sample', () => {
    for (const { rate, cutoff, in: x, out } of reference.filters) {
      const y = zeroLagLowPass(x, cutoff, rate);
      expect(y).toHaveLength(out.length);
      // the run-up has faded to 1e-9
      y.forEach((v, i) => {
        expect(Math.abs(v - (out[i] ?? Number.NaN))).toBeLessThan(1e-9);
      });
    }
  });

  it('has gain 1/√2 at the cut-off after both passes', () => {
    for (const { cutoff, gain } of reference.gains) {
      expect(gain[0], `at ${cutoff} Hz`).toBeCloseTo(Math.SQRT1_2, 9);
    }
    const rate = 100;
    const x = Array.from({ length: 2000 }, (_, i) => Math.cos((2 * Math.PI * 6 * i) / rate));
    const middle = zeroLagLowPass(x, 6, rate).slice(500, 1500);
    expect(measure(middle, 6, rate)).toBeCloseTo(Math.SQRT1_2, 5);
    // stated as .70711, computed from the corner's correction
    expect(measure(middle, 6, rate).toFixed(5)).toBe('0.70711');
  });

  it('leaves constants and straight lines unchanged', () => {
    const line = Array.from({ length: 60 }, (_, i) => 3 - 0.25 * i);
    zeroLagLowPass(line, 6, 50).forEach((v, i) => {
      expect(v).toBeCloseTo(line[i] ?? Number.NaN, 8);
    });
    for (const v of zeroLagLowPass(new Array<number>(40).fill(-7.5), 6, 50)) expect(v).toBeCloseTo(-7.5, 12);
  });

  it('gives the reversed output for reversed input, also for few samples', () => {
    const x = [0.1, 4, -2, 8, 3, 3, 9, -1, 0, 2, 5, 5.5];
    const forward = zeroLagLowPass(x, 6, 50);
    const backward = [...zeroLagLowPass([...x].reverse(), 6, 50)].reverse();
    forward.forEach((v, i) => {
      expect(v).toBeCloseTo(backward[i] ?? Number.NaN, 12);
    });
  });

  it('takes one sample, two samples and none', () => {
    expect(zeroLagLowPass([], 6, 50)).toEqual([]);
    expect(zeroLagLowPass([2], 6, 50)).toEqual([2]);
    expect(zeroLagLowPass([2, 2], 6, 50).map((v) => Math.round(v * 1e9) / 1e9)).toEqual([2, 2]);
    expect(runUpLength(butterworthCoefficients(6, 50), 2)).toBe(1);
  });

  it('throws for a cut-off that the rate cannot carry', () => {
    expect(() => butterworthCoefficients(25, 50)).toThrow(RangeError);
    expect(() => butterworthCoefficients(0, 50)).toThrow(RangeError);
  });
});
