import { CholeskyDecomposition, Matrix } from 'ml-matrix';

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

export interface WaveModel {
  /** Seconds of the first harmonic. */
  readonly period: number;
  readonly harmonics: number;
  /** Fit a straight drift as well. */
  readonly slope: boolean;
}

/**
 * A coefficient may be this many times as uncertain as in a spread-out design of as many samples. Beyond it the
 * samples sit at the wrong places of the cycle to tell the terms apart. Our default.
 */
const largestInflation = 12;

/**
 * Fit a wave of known period to samples at any, even or uneven, times. Exact for noise-free waves of the model.
 *
 * @returns null when there are fewer samples than unknowns, the period is not above 0, or the samples sit at places of
 *   the cycle that cannot tell the terms apart (all at kick tops, say)
 * @see Bloomfield, Fourier Analysis of Time Series: least squares at a known frequency. Cost: linear in samples.
 */
export function fitWave(
  times: readonly number[],
  samples: readonly number[],
  model: WaveModel,
): WaveFit | null {
  const n = times.length;
  const first = model.slope ? 2 : 1;
  const p = first + 2 * model.harmonics;
  if (n < p || !(model.period > 0)) return null;
  let centre = 0;
  for (const t of times) centre += t / n;
  const omega = (2 * Math.PI) / model.period;
  const gram = new Float64Array(p * p);
  const right = new Float64Array(p);
  const row = new Float64Array(p);
  let square = 0;
  for (let i = 0; i < n; i++) {
    fillRow(row, (times[i] ?? 0) - centre, omega, model.harmonics, first);
    const y = samples[i] ?? 0;
    square += y * y;
    for (let a = 0; a < p; a++) {
      const ra = row[a] ?? 0;
      right[a] = (right[a] ?? 0) + ra * y;
      for (let b = 0; b <= a; b++) gram[a * p + b] = (gram[a * p + b] ?? 0) + ra * (row[b] ?? 0);
    }
  }
  const unitCovariance = inverseOfGram(gram, p);
  if (!unitCovariance) return null;
  for (let a = 0; a < p; a++) {
    // the cosine of a well spread design has mean square one half; offset and slope are judged by their own size
    const spread = a < first ? (gram[a * p + a] ?? 0) : n / 2;
    if (!((unitCovariance[a * p + a] ?? Infinity) * spread < largestInflation)) return null;
  }
  const coefficients = new Float64Array(p);
  let explained = 0;
  for (let a = 0; a < p; a++) {
    let sum = 0;
    for (let b = 0; b < p; b++) sum += (unitCovariance[a * p + b] ?? 0) * (right[b] ?? 0);
    coefficients[a] = sum;
    explained += sum * (right[a] ?? 0);
  }
  return {
    angularFrequency: omega,
    centre,
    harmonics: model.harmonics,
    hasSlope: model.slope,
    coefficients,
    unitCovariance,
    residualSd: n > p ? Math.sqrt(Math.max(0, square - explained) / (n - p)) : null,
    samples: n,
  };
}

/** cos kx and sin kx by the addition theorem, so each sample costs one sine and one cosine. */
function fillRow(row: Float64Array, tau: number, omega: number, harmonics: number, first: number): void {
  row[0] = 1;
  if (first === 2) row[1] = tau;
  const c1 = Math.cos(omega * tau);
  const s1 = Math.sin(omega * tau);
  let c = 1;
  let s = 0;
  for (let k = 0; k < harmonics; k++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    row[first + 2 * k] = c;
    row[first + 2 * k + 1] = s;
  }
}

function inverseOfGram(lower: Float64Array, p: number): Float64Array | null {
  // scaling to a unit diagonal keeps seconds and pixels out of the conditioning
  const scale = Float64Array.from({ length: p }, (_, a) => Math.sqrt(lower[a * p + a] ?? 0));
  if (scale.some((s) => !(s > 1e-12))) return null;
  const scaled = Matrix.zeros(p, p);
  for (let a = 0; a < p; a++) {
    for (let b = 0; b <= a; b++) {
      const v = (lower[a * p + b] ?? 0) / ((scale[a] ?? 1) * (scale[b] ?? 1));
      scaled.set(a, b, v);
      scaled.set(b, a, v);
    }
  }
  const cholesky = new CholeskyDecomposition(scaled);
  if (!cholesky.isPositiveDefinite()) return null;
  const inverse = cholesky.solve(Matrix.eye(p));
  const out = new Float64Array(p * p);
  for (let a = 0; a < p; a++) {
    for (let b = 0; b < p; b++) {
      const v = inverse.get(a, b) / ((scale[a] ?? 1) * (scale[b] ?? 1));
      if (!Number.isFinite(v)) return null;
      out[a * p + b] = v;
    }
  }
  return out;
}
