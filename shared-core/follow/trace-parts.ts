import type { BodyTrace } from './body-trace';

/** A part with fewer points than this shows no movement. */
const leastPoints = 6;

/** A trace cut where frames are missing for longer than `hole` seconds; parts of a few points are left out. */
export function traceParts(trace: BodyTrace, hole: number): readonly BodyTrace[] {
  const cuts: number[] = [0];
  trace.times.forEach((time, i) => {
    if (i > 0 && time - (trace.times[i - 1] as number) > hole) cuts.push(i);
  });
  cuts.push(trace.times.length);
  return cuts.slice(1).flatMap((to, k) => {
    const from = cuts[k] as number;
    if (to - from < leastPoints) return [];
    const part = (row: readonly number[]): readonly number[] => row.slice(from, to);
    return [
      {
        frames: part(trace.frames),
        times: part(trace.times),
        x: part(trace.x),
        y: part(trace.y),
        sd: part(trace.sd),
      },
    ];
  });
}
