import { type WaveDesign, type WaveModel, waveDesign } from './wave-design';

/**
 * Least-squares wave: y(t) = offset + slope·(t − centre) + Σ a_k cos(kω(t − centre)) + b_k sin(kω(t − centre)).
 * `coefficients` are [offset, slope?, a1, b1, a2, b2, …]; `unitCovariance` is their covariance for samples of
 * variance 1, row by row.
 */
export interface WaveFit {
  readonly angularFrequency: number;
  readonly centre: number;
  readonly harmonics: number;
  readonly hasSlope: boolean;
  readonly coefficients: Float64Array;
  readonly unitCovariance: Float64Array;
  /** Root mean square of the residuals over the degrees of freedom left; null when none are left. */
  readonly residualSd: number | null;
  readonly samples: number;
}

/**
 * Fit a wave of known period to samples at any, even or uneven, times. Exact for noise-free waves of the model.
 *
 * @param room to work in, for a row of fits to the same times (`waveDesign`)
 * @returns null where the times make no design (see `waveDesign`)
 * @see Bloomfield, Fourier Analysis of Time Series: least squares at a known frequency. Cost: linear in samples.
 */
export function fitWave(
  times: readonly number[],
  samples: readonly number[],
  model: WaveModel,
  weights: readonly number[] | null = null,
  room: Float64Array | null = null,
): WaveFit | null {
  const design = waveDesign(times, model, weights, 0, times.length, room);
  return design && fitDesign(design, samples);
}

/** Fit samples taken at the times of a design, as many as it has, from `from` on in `samples`. */
export function fitDesign(design: WaveDesign, samples: readonly number[], from = 0): WaveFit {
  const { rows, roots, unknowns: p, samples: n, unitCovariance, model } = design;
  const right = new Float64Array(p);
  let square = 0;
  for (let i = 0; i < n; i++) {
    const y = roots ? (samples[from + i] as number) * (roots[i] as number) : (samples[from + i] as number);
    square += y * y;
    const at = i * p;
    for (let a = 0; a < p; a++) right[a] = (right[a] as number) + (rows[at + a] as number) * y;
  }
  const coefficients = new Float64Array(p);
  let explained = 0;
  for (let a = 0; a < p; a++) {
    let sum = 0;
    for (let b = 0; b < p; b++) sum += (unitCovariance[a * p + b] as number) * (right[b] as number);
    coefficients[a] = sum;
    explained += sum * (right[a] as number);
  }
  return {
    angularFrequency: (2 * Math.PI) / model.period,
    centre: design.centre,
    harmonics: model.harmonics,
    hasSlope: model.slope,
    coefficients,
    unitCovariance,
    residualSd: n > p ? Math.sqrt(Math.max(0, square - explained) / (n - p)) : null,
    samples: n,
  };
}
