import type { FrameTable } from './frame-table';

/**
 * The table of an interlaced film whose every field is a frame of its own: frame 2n is the first field of coded picture
 * n and starts with it, frame 2n+1 its second field, half-way to the next picture. After the last picture the last gap
 * is taken again, as deinterlacers do. Ticks are twice as fine as the film's, so that the half is exact. A single
 * picture's second field starts half-way to the table's end.
 */
export function fieldTable({ ticksPerSecond, starts, endTick }: FrameTable): FrameTable {
  const last = starts.at(-1) ?? 0;
  const before = starts.at(-2);
  const next = before === undefined ? endTick : 2 * last - before;
  return {
    ticksPerSecond: ticksPerSecond * 2,
    starts: starts.flatMap((start, n) => [2 * start, start + (starts[n + 1] ?? next)]),
    endTick: 2 * next,
  };
}
