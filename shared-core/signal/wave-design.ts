import { CholeskyDecomposition, Matrix } from 'ml-matrix';

export interface WaveModel {
  /** Seconds of the first harmonic. */
  readonly period: number;
  readonly harmonics: number;
  /** Fit a straight drift as well. */
  readonly slope: boolean;
}

/**
 * All of a least-squares wave that hangs on the sample times alone: landmarks marked on the same frames share it.
 * `rows` holds, sample by sample, [1, t − centre?, cos, sin, cos 2, sin 2, …].
 */
export interface WaveDesign {
  readonly model: WaveModel;
  readonly centre: number;
  readonly samples: number;
  readonly unknowns: number;
  readonly rows: Float64Array;
  /** Square roots of the samples' weights, already in `rows`; null when all count alike. */
  readonly roots: Float64Array | null;
  /** Covariance of the coefficients for samples of variance 1, row by row. */
  readonly unitCovariance: Float64Array;
}

/**
 * A coefficient may be this many times as uncertain as in a spread-out design of as many samples. Beyond it the
 * samples sit at the wrong places of the cycle to tell the terms apart. Our default.
 */
const largestInflation = 12;

/**
 * Design of a wave of known period at any, even or uneven, times.
 *
 * @param weights how much each sample counts: one over its variance, against a sample of variance 1
 * @returns null when there are fewer samples than unknowns, the period is not above 0, or the samples sit at places of
 *   the cycle that cannot tell the terms apart (all at kick tops, say). Cost: linear in samples.
 */
export function waveDesign(
  times: readonly number[],
  model: WaveModel,
  weights: readonly number[] | null = null,
): WaveDesign | null {
  const n = times.length;
  const first = model.slope ? 2 : 1;
  const p = first + 2 * model.harmonics;
  if (n < p || !(model.period > 0)) return null;
  let centre = 0;
  for (const t of times) centre += t / n;
  const omega = (2 * Math.PI) / model.period;
  const rows = new Float64Array(n * p);
  const roots = weights && Float64Array.from(weights, Math.sqrt);
  let total = 0;
  const gram = new Float64Array(p * p);
  for (let i = 0; i < n; i++) {
    const at = i * p;
    fillRow(rows, at, (times[i] ?? 0) - centre, omega, model.harmonics, first);
    const root = roots ? (roots[i] ?? 0) : 1;
    total += root * root;
    if (root !== 1) for (let a = 0; a < p; a++) rows[at + a] = (rows[at + a] as number) * root;
    for (let a = 0; a < p; a++) {
      const ra = rows[at + a] as number;
      const to = a * p;
      for (let b = 0; b <= a; b++) gram[to + b] = (gram[to + b] as number) + ra * (rows[at + b] as number);
    }
  }
  const unitCovariance = inverseOfGram(gram, p);
  if (!unitCovariance) return null;
  for (let a = 0; a < p; a++) {
    // the cosine of a well spread design has mean square one half; offset and slope are judged by their own size
    const spread = a < first ? (gram[a * p + a] ?? 0) : total / 2;
    if (!((unitCovariance[a * p + a] ?? Infinity) * spread < largestInflation)) return null;
  }
  return { model, centre, samples: n, unknowns: p, rows, roots, unitCovariance };
}

/** cos kx and sin kx by the addition theorem, so each sample costs one sine and one cosine. */
function fillRow(
  rows: Float64Array,
  at: number,
  tau: number,
  omega: number,
  harmonics: number,
  first: number,
): void {
  rows[at] = 1;
  if (first === 2) rows[at + 1] = tau;
  const c1 = Math.cos(omega * tau);
  const s1 = Math.sin(omega * tau);
  let c = 1;
  let s = 0;
  for (let k = 0; k < harmonics; k++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    rows[at + first + 2 * k] = c;
    rows[at + first + 2 * k + 1] = s;
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
