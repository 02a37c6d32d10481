import { keptWith } from '../../../units/kept-with';
import type { WaveFit } from '../../../signal/fit-wave';
import { periodSlope } from '../../../signal/period-slope';
import type { LandmarkWave } from './landmark-wave';

/**
 * The fit through all whole cycles with what its period may be off counted into the covariance of its coefficients. For
 * sizes of harmonics and for the drift; how late a wave comes hangs on the marked cycles in a way of its own.
 */
export const fitInDoubtOfPeriod = keptWith((wave: LandmarkWave): WaveFit => {
  const { pooled, pooledDesign, periodVariance, sd } = wave;
  const p = pooled.coefficients.length;
  const unitCovariance = Float64Array.from(pooled.unitCovariance);
  if (periodVariance > 0 && sd > 0) {
    const slope = periodSlope(pooledDesign, pooled);
    const unit = periodVariance / sd ** 2;
    for (let a = 0; a < p; a++)
      for (let b = 0; b < p; b++)
        unitCovariance[a * p + b] =
          (unitCovariance[a * p + b] as number) + unit * (slope[a] as number) * (slope[b] as number);
  }
  return { ...pooled, unitCovariance };
});
