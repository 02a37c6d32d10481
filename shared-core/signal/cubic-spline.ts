/** A curve through given knots; outside them the end pieces are carried on. */
export type Curve = (time: number) => number;

/**
 * Natural cubic spline through (times, samples). Times must rise strictly; with two knots it is the straight line,
 * with one the constant. No knots, or times that don't rise, are a caller's bug and throw.
 * Cost: linear to build, log2(n) to read.
 */
export function naturalSpline(times: readonly number[], samples: readonly number[]): Curve {
  const n = times.length;
  if (n === 0 || samples.length !== n) throw new RangeError('a spline needs as many samples as times');
  const t = Float64Array.from(times);
  const y = Float64Array.from(samples);
  const at = (a: Float64Array, i: number): number => a[i] as number;
  for (let i = 1; i < n; i++) {
    if (!(at(t, i) > at(t, i - 1))) throw new RangeError('times of a spline must rise');
  }
  if (n === 1) return () => at(y, 0);
  // second derivatives at the knots: tridiagonal system, swept once down and once up; zero at both ends
  const bend = new Float64Array(n);
  const sweep = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const before = at(t, i) - at(t, i - 1);
    const after = at(t, i + 1) - at(t, i);
    const pivot = 2 * (before + after) - before * at(sweep, i - 1);
    const change = (at(y, i + 1) - at(y, i)) / after - (at(y, i) - at(y, i - 1)) / before;
    sweep[i] = after / pivot;
    bend[i] = (6 * change - before * at(bend, i - 1)) / pivot;
  }
  for (let i = n - 2; i > 0; i--) bend[i] = at(bend, i) - at(sweep, i) * at(bend, i + 1);
  return (time) => {
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(t, middle) <= time) low = middle;
      else high = middle;
    }
    const width = at(t, low + 1) - at(t, low);
    const a = (at(t, low + 1) - time) / width;
    const b = 1 - a;
    return (
      a * at(y, low) +
      b * at(y, low + 1) +
      (((a * a * a - a) * at(bend, low) + (b * b * b - b) * at(bend, low + 1)) * width * width) / 6
    );
  };
}
