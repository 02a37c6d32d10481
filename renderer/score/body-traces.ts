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
  let [highest, lowest] = [Infinity, -Infinity];
  for (const { y } of laid) {
    if (y < highest) highest = y;
    if (y > lowest) lowest = y;
  }
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

/** A point of a trace as it is drawn: pixels across, and its height as a share. */
export interface TracePoint {
  readonly x: number;
  readonly share: number;
}

/**
 * Of a run what the screen can show: the points between two edges and one beyond each, and of those in one column of pixels
 * the first, the highest, the lowest and the last. A minute of every frame is thousands of points, and the score hundreds wide.
 */
export function shownPoints(
  run: TraceRun,
  toX: (time: number) => number,
  left: number,
  right: number,
): readonly TracePoint[] {
  const shown: TracePoint[] = [];
  let column: TracePoint[] = [];
  let before: TracePoint | null = null;
  const close = (): void => {
    if (column.length <= 4) shown.push(...column);
    else {
      const [first, last] = [column[0] as TracePoint, column.at(-1) as TracePoint];
      let [high, low] = [first, first];
      for (const point of column) {
        if (point.share < high.share) high = point;
        if (point.share > low.share) low = point;
      }
      shown.push(...new Set([first, ...(high.x <= low.x ? [high, low] : [low, high]), last]));
    }
    column = [];
  };
  for (const { time, share } of run.points) {
    const point = { x: toX(time), share };
    if (point.x < left) {
      before = point;
      continue;
    }
    if (before) shown.push(before);
    before = null;
    if (column[0] && Math.floor(point.x) !== Math.floor(column[0].x)) close();
    column.push(point);
    if (point.x > right) break;
  }
  close();
  return shown;
}
