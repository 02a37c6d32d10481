export interface SmoothedTrack {
  readonly values: readonly number[];
  /** Variance of each value, given that the samples' variances and the acceleration's size are right. */
  readonly variances: readonly number[];
}

/**
 * One coordinate of a moving point from noisy samples at uneven times: the fixed-interval smoother (Rauch, Tung and
 * Striebel 1965, from memory) of a point whose acceleration is white noise. `accelerationSd` is the standard deviation
 * of the change of speed over one second (unit of the samples per s^1.5): the larger, the more the samples rule.
 * A sample of variance Infinity is no sample at all. Times ascending; one value gives itself.
 */
export function smoothTrack(
  times: readonly number[],
  samples: readonly number[],
  variances: readonly number[],
  accelerationSd: number,
): SmoothedTrack {
  const n = samples.length;
  if (n < 2) return { values: [...samples], variances: [...variances] };
  const q = accelerationSd * accelerationSd;
  const filtered: State[] = [];
  const predicted: State[] = [];
  // a wide start: the first two samples place it
  const span = Math.max(1e-6, (times[n - 1] as number) - (times[0] as number));
  const wide = (Math.max(...samples) - Math.min(...samples) + 1) * 1e3;
  let state: State = { p: samples[0] as number, v: 0, pp: wide ** 2, pv: 0, vv: (wide / span) ** 2 };
  for (let i = 0; i < n; i++) {
    if (i > 0) state = predict(state, (times[i] as number) - (times[i - 1] as number), q);
    predicted.push(state);
    state = update(state, samples[i] as number, variances[i] ?? Infinity);
    filtered.push(state);
  }
  const values = new Array<number>(n);
  const spread = new Array<number>(n);
  let after = state;
  values[n - 1] = state.p;
  spread[n - 1] = state.pp;
  for (let i = n - 2; i >= 0; i--) {
    after = goBack(
      filtered[i] ?? state,
      predicted[i + 1] ?? state,
      after,
      (times[i + 1] as number) - (times[i] as number),
    );
    values[i] = after.p;
    spread[i] = Math.max(0, after.pp);
  }
  return { values, variances: spread };
}

/** Place and speed with their covariance. */
interface State {
  readonly p: number;
  readonly v: number;
  readonly pp: number;
  readonly pv: number;
  readonly vv: number;
}

function predict({ p, v, pp, pv, vv }: State, dt: number, q: number): State {
  return {
    p: p + v * dt,
    v,
    pp: pp + 2 * dt * pv + dt * dt * vv + (q * dt ** 3) / 3,
    pv: pv + dt * vv + (q * dt * dt) / 2,
    vv: vv + q * dt,
  };
}

function update(state: State, sample: number, variance: number): State {
  if (!Number.isFinite(variance)) return state;
  const { p, v, pp, pv, vv } = state;
  const total = pp + variance;
  const off = sample - p;
  return {
    p: p + (pp / total) * off,
    v: v + (pv / total) * off,
    pp: (pp * variance) / total,
    pv: (pv * variance) / total,
    vv: vv - (pv * pv) / total,
  };
}

/** The smoothed state from the filtered one here, and the predicted and smoothed ones a step later. */
function goBack(here: State, next: State, smoothed: State, dt: number): State {
  // gain = P Fᵀ (P_next)⁻¹, two by two
  const a = here.pp + dt * here.pv;
  const b = here.pv;
  const c = here.pv + dt * here.vv;
  const d = here.vv;
  const determinant = next.pp * next.vv - next.pv * next.pv;
  if (!(determinant > 0)) return here;
  const g11 = (a * next.vv - b * next.pv) / determinant;
  const g12 = (b * next.pp - a * next.pv) / determinant;
  const g21 = (c * next.vv - d * next.pv) / determinant;
  const g22 = (d * next.pp - c * next.pv) / determinant;
  const dp = smoothed.p - next.p;
  const dv = smoothed.v - next.v;
  const epp = smoothed.pp - next.pp;
  const epv = smoothed.pv - next.pv;
  const evv = smoothed.vv - next.vv;
  const r11 = g11 * epp + g12 * epv;
  const r12 = g11 * epv + g12 * evv;
  const r21 = g21 * epp + g22 * epv;
  const r22 = g21 * epv + g22 * evv;
  return {
    p: here.p + g11 * dp + g12 * dv,
    v: here.v + g21 * dp + g22 * dv,
    pp: here.pp + r11 * g11 + r12 * g12,
    pv: here.pv + r11 * g21 + r12 * g22,
    vv: here.vv + r21 * g21 + r22 * g22,
  };
}
