import type { TimedEvent } from '../timed-event';
import { countCycles, longestCounted } from './count-cycles';

export interface Period {
  /** Seconds of one cycle. */
  readonly seconds: number;
  /** From marking and frame rounding, s²; marks shared by neighbouring cycles are counted once. */
  readonly variance: number;
}

/**
 * Period common to rows of events that repeat once a cycle (kick tops and kick bottoms, say), by least squares of time
 * on cycle number with an offset for each row. Cycle numbers come from rounding each gap by the usual gap, so a missed
 * mark leaves a hole and not a long cycle; a gap too long to count starts a new run with an offset of its own.
 *
 * Null when no offset has two events at different times. Cost: linear in events, and one sort.
 *
 * @param typical the usual length of a cycle where more is known than these rows tell
 */
export function fitPeriod(
  rows: readonly (readonly TimedEvent[])[],
  typical = countCycles(rows)?.typical,
): Period | null {
  if (typical === undefined) return null;
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
