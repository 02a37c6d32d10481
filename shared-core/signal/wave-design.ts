import { invertPositive } from './invert-positive';

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
 * @param from first sample taken, and `to` the one after the last
 * @param room rows are written here where they fit, for designs that are used once; null: rows of their own
 * @returns null when there are fewer samples than unknowns, the period is not above 0, or the samples sit at places of
 *   the cycle that cannot tell the terms apart (all at kick tops, say). Cost: linear in samples.
 */
export function waveDesign(
  times: readonly number[],
  model: WaveModel,
  weights: readonly number[] | null = null,
  from = 0,
  to = times.length,
  room: Float64Array | null = null,
): WaveDesign | null {
  const n = to - from;
  const first = model.slope ? 2 : 1;
  const p = first + 2 * model.harmonics;
  if (n < p || !(model.period > 0)) return null;
  let centre = 0;
  for (let i = from; i < to; i++) centre += (times[i] as number) / n;
  const omega = (2 * Math.PI) / model.period;
  const rows = room && room.length >= n * p ? room : new Float64Array(n * p);
  const roots = weights && new Float64Array(n);
  const sums = new WaveSums(model.harmonics);
  for (let i = 0; i < n; i++) {
    const at = i * p;
    const tau = (times[from + i] as number) - centre;
    const weight = weights ? (weights[from + i] as number) : 1;
    fillRow(rows, at, tau, omega, model.harmonics, first);
    sums.add(rows, at + first, tau, weight);
    if (!roots) continue;
    const root = Math.sqrt(weight);
    roots[i] = root;
    if (root !== 1) for (let a = 0; a < p; a++) rows[at + a] = (rows[at + a] as number) * root;
  }
  const gram = sums.gram(model.slope);
  const unitCovariance = inverseOfGram(gram, p);
  if (!unitCovariance) return null;
  for (let a = 0; a < p; a++) {
    // the cosine of a well spread design has mean square one half; offset and slope are judged by their own size
    const spread = a < first ? (gram[a * p + a] as number) : sums.total / 2;
    if (!((unitCovariance[a * p + a] ?? Infinity) * spread < largestInflation)) return null;
  }
  return { model, centre, samples: n, unknowns: p, rows, roots, unitCovariance };
}

/**
 * Products of two of the design's waves are sums of waves of double the harmonics at most, so the whole matrix of
 * products comes from four sums a harmonic and sample instead of one for each pair of unknowns.
 */
class WaveSums {
  total = 0;
  readonly #harmonics: number;
  /** Sums of cos jx and sin jx, j up to twice the harmonics; and of them times the time, up to the harmonics. */
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  readonly #timeCos: Float64Array;
  readonly #timeSin: Float64Array;
  #time = 0;
  #timeSquare = 0;

  constructor(harmonics: number) {
    this.#harmonics = harmonics;
    this.#cos = new Float64Array(2 * harmonics + 1);
    this.#sin = new Float64Array(2 * harmonics + 1);
    this.#timeCos = new Float64Array(harmonics + 1);
    this.#timeSin = new Float64Array(harmonics + 1);
  }

  /** Take in one sample whose cosines and sines stand in `rows` from `at` on. */
  add(rows: Float64Array, at: number, tau: number, weight: number): void {
    const n = this.#harmonics;
    const cos = this.#cos;
    const sin = this.#sin;
    const lastC = n > 0 ? (rows[at + 2 * n - 2] as number) : 1;
    const lastS = n > 0 ? (rows[at + 2 * n - 1] as number) : 0;
    this.total += weight;
    this.#time += weight * tau;
    this.#timeSquare += weight * tau * tau;
    for (let k = 1; k <= n; k++) {
      const c = rows[at + 2 * k - 2] as number;
      const s = rows[at + 2 * k - 1] as number;
      const wc = weight * c;
      const ws = weight * s;
      cos[k] = (cos[k] as number) + wc;
      sin[k] = (sin[k] as number) + ws;
      cos[n + k] = (cos[n + k] as number) + wc * lastC - ws * lastS;
      sin[n + k] = (sin[n + k] as number) + ws * lastC + wc * lastS;
      this.#timeCos[k] = (this.#timeCos[k] as number) + wc * tau;
      this.#timeSin[k] = (this.#timeSin[k] as number) + ws * tau;
    }
  }

  /** The matrix of products of the design's columns, lower half. */
  gram(slope: boolean): Float64Array {
    const n = this.#harmonics;
    const first = slope ? 2 : 1;
    const p = first + 2 * n;
    const cos = Float64Array.from(this.#cos);
    cos[0] = this.total;
    const sin = this.#sin;
    const out = new Float64Array(p * p);
    out[0] = this.total;
    if (slope) {
      out[p] = this.#time;
      out[p + 1] = this.#timeSquare;
    }
    for (let k = 1; k <= n; k++) {
      const c = (first + 2 * k - 2) * p;
      const s = c + p;
      out[c] = cos[k] as number;
      out[s] = sin[k] as number;
      if (slope) {
        out[c + 1] = this.#timeCos[k] as number;
        out[s + 1] = this.#timeSin[k] as number;
      }
      for (let m = 1; m <= k; m++) {
        const [sum, apart] = [k + m, k - m];
        const at = first + 2 * m - 2;
        out[c + at] = ((cos[apart] as number) + (cos[sum] as number)) / 2;
        out[c + at + 1] = ((sin[sum] as number) - (sin[apart] as number)) / 2;
        out[s + at] = ((sin[sum] as number) + (sin[apart] as number)) / 2;
        out[s + at + 1] = ((cos[apart] as number) - (cos[sum] as number)) / 2;
      }
    }
    return out;
  }
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
  const scale = new Float64Array(p);
  for (let a = 0; a < p; a++) {
    const size = Math.sqrt(lower[a * p + a] as number);
    if (!(size > 1e-12)) return null;
    scale[a] = size;
  }
  const scaled = (values: Float64Array): Float64Array => {
    for (let a = 0; a < p; a++)
      for (let b = 0; b < p; b++)
        values[a * p + b] = (values[a * p + b] as number) / ((scale[a] as number) * (scale[b] as number));
    return values;
  };
  const inverse = invertPositive(scaled(Float64Array.from(lower)), p);
  return inverse && scaled(inverse);
}
