import type { TimedEvent } from '../timed-event';
import { longestCounted } from './count-cycles';

/** Where in a stroke an instant falls: whole strokes from the first mark of the clock's hands on, and the share of one. */
export type StrokeClock = (time: number) => number;

/**
 * Strokes counted along one kind of hand mark, each stroke as long as its own marks say, so that a drifting tempo moves no
 * instant within its stroke. Null with fewer than two marks.
 *
 * @param typical usual length of a stroke, seconds
 */
export function strokeClock(marks: readonly TimedEvent[], typical: number): StrokeClock | null {
  const anchors: { time: number; stroke: number }[] = [];
  for (const { time } of marks) {
    const last = anchors.at(-1);
    const strokes = last ? Math.max(1, Math.round((time - last.time) / typical)) : 0;
    anchors.push({ time, stroke: last ? last.stroke + strokes : 0 });
  }
  if (anchors.length < 2) return null;
  return (time) => {
    let at = 0;
    while (at < anchors.length - 2 && time >= (anchors[at + 1]?.time ?? 0)) at += 1;
    const [from, to] = [anchors[at], anchors[at + 1]];
    if (!from || !to) return Number.NaN;
    const strokes = to.stroke - from.stroke;
    // what was too long to be counted is counted by the usual stroke
    const pace = strokes > longestCounted ? typical : (to.time - from.time) / strokes;
    const inside = time >= from.time && time <= to.time;
    if (inside && strokes <= longestCounted) return from.stroke + (time - from.time) / pace;
    return time > to.time || (inside && to.time - time < time - from.time)
      ? to.stroke + (time - to.time) / pace
      : from.stroke + (time - from.time) / pace;
  };
}
