import type { TimedEvent } from '../body/cycle-frame';

export interface Period {
  /** Seconds of one cycle. */
  readonly seconds: number;
  /** From marking and frame rounding, s²; marks shared by neighbouring cycles are counted once. */
  readonly variance: number;
}

/** A gap longer than this many usual gaps can't be counted in whole cycles with confidence. Our default. */
const longestCounted = 3.5;

/** Gaps up to this many medians are single cycles when the usual gap is averaged. Our default. */
const singleCycle = 1.6;

/**
 * Period common to rows of events that repeat once a cycle (kick tops and kick bottoms, say), by least squares of time
 * on cycle number with an offset for each row. Cycle numbers come from rounding each gap by the usual gap, so a missed
 * mark leaves a hole and not a long cycle; a gap too long to count starts a new run with an offset of its own.
 *
 * Null when no offset has two events at different times. Cost: linear in events, and one sort.
 */
export function fitPeriod(rows: readonly (readonly TimedEvent[])[]): Period | null {
  const typical = usualGap(rows);
  if (typical === null) return null;
  const groups = rows.flatMap((row) => countedRuns(row, typical));
  let nn = 0;
  let nt = 0;
  let noise = 0;
  for (const group of groups) {
    const middle = group.reduce((sum, each) => sum + each.cycle, 0) / group.length;
    const start = group[0]?.mark.time ?? 0;
    for (const { mark, cycle } of group) {
      const lever = cycle - middle;
      nn += lever * lever;
      nt += lever * (mark.time - start);
      noise += lever * lever * mark.variance;
    }
  }
  if (nn === 0) return null;
  const seconds = nt / nn;
  return seconds > 0 ? { seconds, variance: noise / (nn * nn) } : null;
}

/** Mean gap between neighbours that are one cycle apart; null without two events at different times. */
function usualGap(rows: readonly (readonly TimedEvent[])[]): number | null {
  const gaps = rows
    .flatMap((row) => row.slice(1).map((mark, i) => mark.time - (row[i]?.time ?? mark.time)))
    .filter((gap) => gap > 0)
    .sort((a, b) => a - b);
  const median = gaps[(gaps.length - 1) >> 1];
  if (median === undefined) return null;
  const single = gaps.filter((gap) => gap <= singleCycle * median && gap >= median / singleCycle);
  return single.reduce((sum, gap) => sum + gap, 0) / single.length;
}

interface Counted {
  readonly mark: TimedEvent;
  readonly cycle: number;
}

function countedRuns(row: readonly TimedEvent[], typical: number): readonly (readonly Counted[])[] {
  const runs: Counted[][] = [];
  for (const mark of row) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const gap = last ? (mark.time - last.mark.time) / typical : Number.POSITIVE_INFINITY;
    if (run && last && gap <= longestCounted)
      run.push({ mark, cycle: last.cycle + Math.max(1, Math.round(gap)) });
    else runs.push([{ mark, cycle: 0 }]);
  }
  return runs;
}
