/**
 * When each shown picture of a clip starts, in the container's own ticks.
 * `starts` is sorted ascending and holds only pictures that are shown (timestamps before the presentation start,
 * as edit lists produce them, are left out by whoever builds the table). Frame n IS the position n in `starts`.
 * `endTick` is where the last picture ends.
 */
export interface FrameTable {
  readonly ticksPerSecond: number;
  readonly starts: readonly number[];
  readonly endTick: number;
}

export function frameCount(table: FrameTable): number {
  return table.starts.length;
}

/** The nearest frame that exists: below 0 gives 0, past the end gives the last; an empty table gives 0. */
export function clampFrame(table: FrameTable, frame: number): number {
  return Math.max(0, Math.min(table.starts.length - 1, Math.round(frame)));
}

/**
 * The one lookup rule: the last frame whose start is at or before `tick`. Before the first start it is frame 0;
 * after the end it is the last frame. Cost: log2(n).
 */
export function frameAtTick(table: FrameTable, tick: number): number {
  let low = 0;
  let high = table.starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((table.starts[middle] as number) <= tick) low = middle;
    else high = middle - 1;
  }
  return Math.max(0, low);
}

/** Start of a frame on the clip's own clock, from its first shown picture (so frame 0 is 0 s). */
export function mediaTimeOf(table: FrameTable, frame: number): number {
  const first = table.starts[0] as number;
  const start = table.starts[clampFrame(table, frame)] ?? first;
  return (start - first) / table.ticksPerSecond;
}
