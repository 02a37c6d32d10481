import type { FrameTable } from './frame-table';

/**
 * A frame table as it is kept in a file: the first start and runs of equal gaps, so a constant-rate hour is one
 * pair and a variable-rate minute a few thousand numbers. The last run's last gap is the last picture's duration.
 */
export interface FrameTimesRecord {
  readonly ticksPerSecond: number;
  readonly firstTick: number;
  /** [gap in ticks, how many times in a row] */
  readonly gaps: readonly (readonly [number, number])[];
}

/** Compress a table; exact: `tableFromRecord(recordFromTable(t))` equals t. */
export function recordFromTable(table: FrameTable): FrameTimesRecord {
  const gaps: [number, number][] = [];
  for (let i = 0; i < table.starts.length; i++) {
    const gap = (table.starts[i + 1] ?? table.endTick) - (table.starts[i] as number);
    const last = gaps.at(-1);
    if (last && last[0] === gap) last[1] += 1;
    else gaps.push([gap, 1]);
  }
  return {
    ticksPerSecond: table.ticksPerSecond,
    firstTick: table.starts[0] as number,
    gaps,
  };
}

/** Expand a record to a table. */
export function tableFromRecord(record: FrameTimesRecord): FrameTable {
  const starts: number[] = [];
  let tick = record.firstTick;
  for (const [gap, times] of record.gaps) {
    for (let k = 0; k < times; k++) {
      starts.push(tick);
      tick += gap;
    }
  }
  return { ticksPerSecond: record.ticksPerSecond, starts, endTick: tick };
}
