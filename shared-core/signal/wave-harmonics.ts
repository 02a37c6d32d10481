import type { WaveFit } from './fit-wave';

export interface Harmonic {
  readonly k: number;
  /** Half of peak-to-peak, noise power taken off, never below 0. */
  readonly amplitude: number;
  /** Standard deviation of the amplitude (of each of cosine and sine part, root mean square). */
  readonly amplitudeSd: number;
  /** Radians in (−π, π], of C cos(kω(t − origin) − φ). */
  readonly phase: number;
  readonly phaseVariance: number;
  /** Variances of the cosine and sine coefficients and their covariance, for error propagation. */
  readonly power: number;
  readonly powerVariance: number;
}

/**
 * Amplitude, phase and power of each harmonic of a fitted wave. Noise adds its own power to a squared amplitude; that
 * is taken off, so amplitudes of pure noise centre on 0 and not above it.
 *
 * @param sampleVariance variance of one sample
 * @param origin time at which phases are counted from
 */
export function waveHarmonics(fit: WaveFit, sampleVariance: number, origin: number): readonly Harmonic[] {
  const first = fit.hasSlope ? 2 : 1;
  const p = fit.coefficients.length;
  return Array.from({ length: fit.harmonics }, (_, i) => {
    const k = i + 1;
    const ia = first + 2 * i;
    const ib = ia + 1;
    const a = fit.coefficients[ia] ?? 0;
    const b = fit.coefficients[ib] ?? 0;
    const va = sampleVariance * (fit.unitCovariance[ia * p + ia] ?? 0);
    const vb = sampleVariance * (fit.unitCovariance[ib * p + ib] ?? 0);
    const vab = sampleVariance * (fit.unitCovariance[ia * p + ib] ?? 0);
    const square = a * a + b * b;
    const noise = va + vb;
    const along = square > 0 ? (a * a * va + b * b * vb + 2 * a * b * vab) / square : noise / 2;
    const across = square > 0 ? (b * b * va + a * a * vb - 2 * a * b * vab) / square : noise / 2;
    const turn = k * fit.angularFrequency * (fit.centre - origin);
    const power = square - noise;
    return {
      k,
      amplitude: Math.sqrt(Math.max(0, power)),
      amplitudeSd: Math.sqrt(along),
      phase: wrap(Math.atan2(b, a) + turn),
      phaseVariance: square > 0 ? across / square : Infinity,
      power,
      // the observed square holds its own noise power, which would be counted twice; below it, it is all there is
      powerVariance: 4 * Math.max(noise, power) * along,
    };
  });
}

/** An angle brought into (−π, π]. */
export function wrap(angle: number): number {
  const turns = Math.ceil((angle - Math.PI) / (2 * Math.PI));
  return angle - turns * 2 * Math.PI;
}
