import type { TimedEvent } from '../timed-event';

/** How the tempo drifts over a swim. */
export interface Drift {
  /** Length of the last cycle less that of the first, as a share of their mean. */
  readonly value: number;
  readonly variance: number;
}

/** How far a mark usually strays from the swimmer's habit, as a share of the cycle. Our default. */
const usualStray = 0.01;

interface Placed {
  readonly time: number;
  readonly variance: number;
  /** Whole cycles from the first mark of its row. */
  readonly cycle: number;
}

/**
 * Drift common to rows of events that come once a cycle: least squares of time on cycle number and its square, each row with an
 * offset of its own. Cycles are counted from mark to mark, so that a missed mark leaves a hole. Null where fewer than three
 * marks of a row are there.
 *
 * @param period mean seconds of a cycle, `cycles` how many there are from the first to the last
 */
export function fitDrift(
  rows: readonly (readonly TimedEvent[])[],
  period: number,
  cycles: number,
): Drift | null {
  const start = Math.min(...rows.flatMap((row) => row[0]?.time ?? []));
  const groups = rows.filter((row) => row.length >= 3).map((row) => placed(row, start, period));
  let [aa, ab, bb, at, bt, tt] = [0, 0, 0, 0, 0, 0];
  let [marks, noise] = [0, 0];
  for (const group of groups) {
    const mean = (of: (each: Placed) => number): number =>
      group.reduce((sum, each) => sum + of(each), 0) / group.length;
    const [a0, b0, t0] = [
      mean(({ cycle }) => cycle),
      mean(({ cycle }) => cycle ** 2),
      mean(({ time }) => time),
    ];
    for (const { cycle, time, variance } of group) {
      const [a, b, t] = [cycle - a0, cycle ** 2 - b0, time - t0];
      aa += a * a;
      ab += a * b;
      bb += b * b;
      at += a * t;
      bt += b * t;
      tt += t * t;
      marks += 1;
      noise += variance + (usualStray * period) ** 2;
    }
  }
  const whole = aa * bb - ab * ab;
  if (!(whole > 1e-9 * aa * bb)) return null;
  const slope = (bb * at - ab * bt) / whole;
  const bend = (aa * bt - ab * at) / whole;
  const free = marks - groups.length - 2;
  const rest = free > 0 ? Math.max(0, tt - slope * at - bend * bt) / free : 0;
  const toDrift = (2 * cycles) / period;
  return { value: toDrift * bend, variance: (toDrift ** 2 * Math.max(noise / marks, rest) * aa) / whole };
}

function placed(row: readonly TimedEvent[], start: number, period: number): readonly Placed[] {
  let cycle = Math.round(((row[0]?.time ?? start) - start) / period);
  return row.map(({ time, variance }, i) => {
    const before = row[i - 1];
    if (before) cycle += Math.max(1, Math.round((time - before.time) / period));
    return { time, variance, cycle };
  });
}
