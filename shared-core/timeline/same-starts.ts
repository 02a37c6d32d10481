import type { FrameTable } from './frame-table';

/**
 * Whether two tables show the same number of pictures at the same times, each counted from its own first picture.
 * Clocks may differ: starts may be apart by `slackTicks` of the coarser one. One tick is half a tick for each of the two
 * times rounded to it (a frame's and the first frame's).
 */
export function sameStarts(one: FrameTable, other: FrameTable, slackTicks = 1): boolean {
  if (one.starts.length !== other.starts.length) return false;
  const slack = slackTicks / Math.min(one.ticksPerSecond, other.ticksPerSecond) + 1e-9;
  const firsts = [one.starts[0] ?? 0, other.starts[0] ?? 0] as const;
  return one.starts.every((start, frame) => {
    const mine = (start - firsts[0]) / one.ticksPerSecond;
    const theirs = ((other.starts[frame] as number) - firsts[1]) / other.ticksPerSecond;
    return Math.abs(mine - theirs) <= slack;
  });
}
