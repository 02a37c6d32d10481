import type { WaveFit } from './fit-wave';
import type { WaveDesign } from './wave-design';

/**
 * How far each coefficient of a fit moves for each second by which the period it was made with is changed: the fit of what
 * the change would leave over, −(X′X)⁻¹ X′ (∂X/∂T) c. Over whole cycles of a rightly known period harmonics do not touch;
 * a period that is a little off makes each of them leak into the others and into the drift, over a single cycle by its own
 * size times the share the period is off.
 *
 * @param fit made of `design`, which must have a slope; its rows must still be there (no `room`)
 * @see Seber, Wild 1989, Nonlinear regression, ch. 2 (first order in a parameter that is not linear)
 */
export function periodSlope(
  { rows, unknowns: p, samples: n, unitCovariance, model }: WaveDesign,
  fit: WaveFit,
): Float64Array {
  const first = model.slope ? 2 : 1;
  if (!model.slope) throw new Error('times are read from the design’s slope');
  const right = new Float64Array(p);
  for (let i = 0; i < n; i++) {
    const at = i * p;
    const root = rows[at] as number;
    // phase of the first harmonic for each second of period, at the sample
    const turn = (fit.angularFrequency * ((rows[at + 1] as number) / root)) / model.period;
    let change = 0;
    for (let k = 1; k <= model.harmonics; k++) {
      const c = first + 2 * k - 2;
      const cosine = rows[at + c] as number;
      const sine = rows[at + c + 1] as number;
      change +=
        k * turn * ((fit.coefficients[c] as number) * sine - (fit.coefficients[c + 1] as number) * cosine);
    }
    for (let a = 0; a < p; a++) right[a] = (right[a] as number) + (rows[at + a] as number) * change;
  }
  return Float64Array.from({ length: p }, (_, a) => {
    let sum = 0;
    for (let b = 0; b < p; b++) sum -= (unitCovariance[a * p + b] as number) * (right[b] as number);
    return sum;
  });
}
