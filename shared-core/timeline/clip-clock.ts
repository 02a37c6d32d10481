import { clampFrame, type FrameTable, frameAtTick, mediaTimeOf } from './frame-table';

/** A frame table read in real time: `slowdown` is playback seconds per real second (240/s stored at 30/s: 8). */
export interface ClipClock {
  readonly table: FrameTable;
  readonly slowdown: number;
}

/** Real seconds from the clip's first shown picture to the start of `frame`; frames outside are clamped. */
export function realTimeOf(clock: ClipClock, frame: number): number {
  return mediaTimeOf(clock.table, frame) / clock.slowdown;
}

/**
 * A time worked out from a start must find that start again: floating-point sums of such times are off by less than a
 * ten-thousandth of a tick in hours of film. No more than that, or a coarse clock would show frames too early.
 */
const slackTicks = 0.01;

/** The frame shown at a real time since the first shown picture, by the table's lookup rule. */
export function frameAtRealTime(clock: ClipClock, time: number): number {
  const media = time * clock.slowdown;
  const first = clock.table.starts[0] as number;
  return frameAtTick(clock.table, first + media * clock.table.ticksPerSecond + slackTicks);
}

/**
 * Local frame interval in real seconds: half the gap to each neighbour; at an end the one gap there is; for a
 * single picture its own duration. This is the Δ of the event uncertainty Δ²/12.
 */
export function localFrameInterval(clock: ClipClock, frame: number): number {
  const { table, slowdown } = clock;
  const n = table.starts.length;
  const i = clampFrame(table, frame);
  const at = (k: number): number => table.starts[k] as number;
  const before = i > 0 ? at(i) - at(i - 1) : undefined;
  const after = i < n - 1 ? at(i + 1) - at(i) : undefined;
  const ticks =
    before !== undefined && after !== undefined
      ? (before + after) / 2
      : (before ?? after ?? table.endTick - at(i));
  return ticks / table.ticksPerSecond / slowdown;
}
