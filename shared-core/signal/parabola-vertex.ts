export interface ParabolaVertex {
  readonly time: number;
  readonly value: number;
  /** Standard deviation of the time, from the samples' own or, when larger, from what the parabola leaves over. */
  readonly timeSd: number;
  /** Second derivative: negative at a top. */
  readonly bend: number;
}

/**
 * Turning point of a parabola fitted to samples by least squares. Null of fewer than four samples, of a curve that does
 * not bend, or when it turns outside the samples. `sampleSd` is the standard deviation of one sample.
 */
export function parabolaVertex(
  times: readonly number[],
  values: readonly number[],
  sampleSd: number,
): ParabolaVertex | null {
  const n = times.length;
  if (n < 4) return null;
  const middle = times.reduce((sum, t) => sum + t, 0) / n;
  const reach = Math.max(...times.map((t) => Math.abs(t - middle)));
  if (!(reach > 0)) return null;
  // scaled times keep the sums well conditioned
  const s = times.map((t) => (t - middle) / reach);
  const m2 = mean(s.map((v) => v * v));
  const m3 = mean(s.map((v) => v ** 3));
  const m4 = mean(s.map((v) => v ** 4));
  const level = mean(values);
  const q = s.map((v) => v * v - (m3 / m2) * v - m2);
  const qq = m4 - m3 ** 2 / m2 - m2 ** 2;
  if (!(m2 > 0) || !(qq > 1e-9)) return null;
  const slope = mean(s.map((v, i) => v * (values[i] as number))) / m2;
  const curve = mean(q.map((v, i) => v * (values[i] as number))) / qq;
  if (curve === 0) return null;
  const turn = m3 / m2 / 2 - slope / (2 * curve);
  if (!(turn >= Math.min(...s) && turn <= Math.max(...s))) return null;
  const left = values.map((value, i) => value - level - slope * (s[i] as number) - curve * (q[i] as number));
  const spread = Math.sqrt(left.reduce((sum, v) => sum + v * v, 0) / (n - 3));
  const sd = Math.max(sampleSd, spread);
  const steepness = 2 * turn - m3 / m2;
  const slopeSd = sd * Math.sqrt(1 / (n * m2) + steepness ** 2 / (n * qq));
  return {
    time: middle + reach * turn,
    value: level + slope * turn + curve * (turn * turn - (m3 / m2) * turn - m2),
    timeSd: (reach * slopeSd) / (2 * Math.abs(curve)),
    bend: (2 * curve) / reach ** 2,
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
