import type { WaveFit } from './fit-wave';
import { trueSize } from './size-interval';

export interface Harmonic {
  readonly k: number;
  /** Half of peak-to-peak, what noise adds to it taken off, never below 0. */
  readonly amplitude: number;
  /** The same as it was seen, noise and all. */
  readonly seen: number;
  /** Standard deviation of the amplitude (of each of cosine and sine part, root mean square). */
  readonly amplitudeSd: number;
  /** Radians in (−π, π], of C cos(kω(t − origin) − φ). */
  readonly phase: number;
  readonly phaseVariance: number;
  /** Square of the amplitude with all of the noise's own power taken off: right on average, and below 0 at times. */
  readonly power: number;
}

/**
 * Amplitude, phase and power of each harmonic of a fitted wave. Noise adds its own power to a squared amplitude; that
 * is taken off: all of it from the power, which is right on average then; from the amplitude, whose root would lean low,
 * the part across it (`trueSize`).
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
    const a = fit.coefficients[ia] as number;
    const b = fit.coefficients[ib] as number;
    const va = sampleVariance * (fit.unitCovariance[ia * p + ia] as number);
    const vb = sampleVariance * (fit.unitCovariance[ib * p + ib] as number);
    const vab = sampleVariance * (fit.unitCovariance[ia * p + ib] as number);
    const square = a * a + b * b;
    const noise = va + vb;
    const along = square > 0 ? (a * a * va + b * b * vb + 2 * a * b * vab) / square : noise / 2;
    const across = square > 0 ? (b * b * va + a * a * vb - 2 * a * b * vab) / square : noise / 2;
    const turn = k * fit.angularFrequency * (fit.centre - origin);
    return {
      k,
      amplitude: trueSize(Math.sqrt(square), Math.sqrt(across)),
      seen: Math.sqrt(square),
      amplitudeSd: Math.sqrt(along),
      phase: wrap(Math.atan2(b, a) + turn),
      phaseVariance: square > 0 ? across / square : Infinity,
      power: square - noise,
    };
  });
}

/** An angle brought into (−π, π]. */
export function wrap(angle: number): number {
  const turns = Math.ceil((angle - Math.PI) / (2 * Math.PI));
  return angle - turns * 2 * Math.PI;
}
