import type { TraceMoment } from './turning-times';

export interface Crossing extends TraceMoment {
  /** From below zero to above it. */
  readonly rising: boolean;
}

/** What is known of a curve whose crossings of zero are wanted. */
export interface CrossedCurve {
  /** Real seconds, ascending. */
  readonly times: readonly number[];
  readonly values: readonly number[];
  /** Standard deviation of each value. */
  readonly sds: readonly number[];
  /** Standard deviation of where zero lies, the same for all values. */
  readonly zeroSd: number;
  /** A crossing goes from at least this far on one side to at least this far on the other. */
  readonly depth: number;
  /** How quickly the curve's slope may change, per second²: what a bridged hole may hide. */
  readonly hurry: number;
}

/** Half of the time around a crossing that is read as a straight line. Our default. */
const lineReach = 0.04;
/** Half of the time around a crossing whose points tell how sure it is: errors come in runs. Our default. */
const doubtReach = 0.07;
/** A longer hole is not bridged. Our choice. */
const longestBridge = 0.25;
/** A curve that ends on its way to zero is carried on for this long at most, seconds. Our choice. */
const longestReach = 0.05;

/**
 * Where a curve goes through zero, to a part of a frame. Points err alike from one to the next, so a line through many
 * of them is no surer than they are. A hole at the crossing is bridged, and a curve that ends on its way to zero is
 * carried on a little; both say so by a wider spread.
 */
export function crossingTimes(curve: CrossedCurve): readonly Crossing[] {
  const { times, values, depth } = curve;
  const found: Crossing[] = [];
  let side = 0;
  let flip = -1;
  values.forEach((value, i) => {
    const before = values[i - 1];
    if (before !== undefined && before * value <= 0 && before !== value) flip = i;
    if (Math.abs(value) < depth) return;
    const now = Math.sign(value);
    if (side !== 0 && now !== side && flip > 0) {
      const at = crossedAt(curve, flip);
      if (at) found.push({ ...at, rising: now > 0 });
    }
    side = now;
  });
  const first = times[0];
  const last = times.at(-1);
  const early = first === undefined ? null : carriedOn(curve, 0, 1);
  const late = last === undefined ? null : carriedOn(curve, times.length - 1, -1);
  return [...(early ? [early] : []), ...found, ...(late ? [late] : [])];
}

/** The crossing between sample `flip − 1` and sample `flip`. */
function crossedAt(curve: CrossedCurve, flip: number): TraceMoment | null {
  const { times, values, sds, zeroSd, hurry } = curve;
  const from = times[flip - 1] as number;
  const to = times[flip] as number;
  const gap = to - from;
  if (gap > longestBridge) return null;
  const a = values[flip - 1] as number;
  const b = values[flip] as number;
  const chord = from + (gap * a) / (a - b);
  const near = times.flatMap((time, i) =>
    i === flip - 1 || i === flip || Math.abs(time - chord) <= lineReach ? [i] : [],
  );
  const line = fittedLine(
    near.map((i) => times[i] as number),
    near.map((i) => values[i] as number),
    near.map((i) => 1 / Math.max(1e-9, sds[i] as number) ** 2),
  );
  const about = times.flatMap((time, i) => (Math.abs(time - chord) <= doubtReach ? [sds[i] as number] : []));
  if (!line || line.slope * (b - a) <= 0) return null;
  const time = Math.min(to, Math.max(from, line.time));
  // between the two samples the curve may bend away from their chord: most in the middle of a hole
  const bend = (hurry * (time - from) * (to - time)) / 2 / Math.sqrt(3);
  const value = Math.hypot(Math.max(line.sd, rootMeanSquare(about)), zeroSd, bend);
  return { time, sd: Math.hypot(value / Math.abs(line.slope), chord - time) };
}

/** A curve that ends near zero and runs toward it; `into` tells from which end it is looked at. */
function carriedOn(curve: CrossedCurve, end: number, into: 1 | -1): Crossing | null {
  const { times, values, sds, zeroSd, depth, hurry } = curve;
  const last = values[end] as number;
  const at = times[end] as number;
  const near = times.flatMap((time, i) => (Math.abs(time - at) <= 2 * lineReach ? [i] : []));
  if (near.length < 4 || near.some((i) => (values[i] as number) * last <= 0)) return null;
  if (!near.some((i) => Math.abs(values[i] as number) >= depth)) return null;
  const line = fittedLine(
    near.map((i) => times[i] as number),
    near.map((i) => values[i] as number),
    near.map((i) => 1 / Math.max(1e-9, sds[i] as number) ** 2),
  );
  if (!line || line.slope === 0) return null;
  const beyond = (at - last / line.slope - at) * -into;
  if (!(beyond > 0 && beyond <= longestReach)) return null;
  const bend = (hurry * beyond ** 2) / 2;
  const value = Math.hypot(line.sd, zeroSd, bend);
  return {
    time: at - last / line.slope,
    sd: value / Math.abs(line.slope),
    rising: line.slope > 0,
  };
}

/** Weighted straight line: where it is zero, its slope, and the spread of its values when all points err alike. */
function fittedLine(
  times: readonly number[],
  values: readonly number[],
  weights: readonly number[],
): { readonly time: number; readonly slope: number; readonly sd: number } | null {
  const sum = (of: (i: number) => number): number =>
    weights.reduce((total, weight, i) => total + weight * of(i), 0);
  const w = sum(() => 1);
  const t = sum((i) => times[i] as number) / w;
  const v = sum((i) => values[i] as number) / w;
  const tt = sum((i) => ((times[i] as number) - t) ** 2);
  const tv = sum((i) => ((times[i] as number) - t) * ((values[i] as number) - v));
  if (!(tt > 0) || tv === 0) return null;
  const slope = tv / tt;
  return { time: t - v / slope, slope, sd: Math.sqrt(weights.length / w) };
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
