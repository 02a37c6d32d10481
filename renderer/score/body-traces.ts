import type { LandmarkName } from '#core/marks/landmark';
import type { Posture } from '#core/swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '#core/timeline/clip-clock';

/** A landmark's height over time, as shares 0 (highest seen) to 1 (lowest seen). */
export interface TraceRun {
  readonly points: readonly { readonly time: number; readonly share: number }[];
}

/** Our default: body lines farther apart than this (real seconds) don't make a line between them. */
const densestGap = 0.15;

/** Height of a landmark where body lines are laid densely enough; sparse ones give nothing to draw. */
export function traceRuns(
  postures: readonly Pick<Posture, 'frame' | 'points'>[],
  landmark: LandmarkName,
  clock: ClipClock,
): readonly TraceRun[] {
  const laid = postures.flatMap((posture) => {
    const point = posture.points[landmark];
    return point ? [{ time: realTimeOf(clock, posture.frame) as number, y: point.y }] : [];
  });
  if (laid.length < 3) return [];
  const highest = Math.min(...laid.map((each) => each.y));
  const lowest = Math.max(...laid.map((each) => each.y));
  const extent = lowest - highest;
  if (extent <= 0) return [];
  const runs: { time: number; share: number }[][] = [];
  let lastTime = Number.NEGATIVE_INFINITY;
  for (const { time, y } of laid) {
    if (time - lastTime > densestGap) runs.push([]);
    runs.at(-1)?.push({ time, share: (y - highest) / extent });
    lastTime = time;
  }
  return runs.filter((run) => run.length >= 3).map((points) => ({ points }));
}
