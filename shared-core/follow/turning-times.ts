import { naturalSpline } from '../signal/cubic-spline';
import { parabolaVertex } from '../signal/parabola-vertex';
import { findPeaks } from '../signal/peaks';
import { resampleUniform } from '../signal/resample-uniform';
import type { BodyTrace } from './body-trace';

/** A moment the traces speak for, and the standard deviation of its time, real seconds. */
export interface TraceMoment {
  readonly time: number;
  readonly sd: number;
}

/** Half of the time around a turning point that is read as a parabola: a tenth of a quick kick. */
const turnReach = 0.055;
/** Turns nearer to each other than this, seconds, are one. */
const leastGap = 0.12;
/** A closer look at the turn, share of that. */
const closerShare = 0.6;
/**
 * A turn that is steeper on one side is no parabola: it moves the vertex by the square of the reach. So much of what the
 * closer look moved is still to go.
 */
const stillToGo = closerShare ** 2 / (1 - closerShare ** 2);
/** With fewer than this many pictures to either side of a turn within reach, no parabola is near it: a curve through the points is. */
const coarse = 2;
/** Parts of a picture a curve's peak is looked for in. */
const fineness = 16;
/** Followed points err alike from frame to frame: their spread counts this many times as large. Our default. */
const alikeness = 1.2;

/** Tops of a curve that stand out by `prominence`, to a part of a frame. Turns cut off by the trace's ends are none. */
export function turningTimes(
  trace: Pick<BodyTrace, 'times' | 'sd'>,
  values: readonly number[],
  prominence: number,
): readonly TraceMoment[] {
  const even = resampleUniform(trace.times, values);
  const minGap = Math.max(2, Math.round(leastGap * even.sampleHz));
  return findPeaks(even.samples, { minProminence: prominence, minGap }).flatMap(({ index }) => {
    const about = even.startTime + index / even.sampleHz;
    const vertexWithin = (reach: number): ReturnType<typeof parabolaVertex> => {
      const near = trace.times.flatMap((time, i) =>
        Math.abs(time - about) <= Math.max(reach, 2.6 / even.sampleHz) ? [i] : [],
      );
      const squares = near.reduce((sum, i) => sum + (trace.sd[i] as number) ** 2, 0);
      return parabolaVertex(
        near.map((i) => trace.times[i] as number),
        near.map((i) => values[i] as number),
        alikeness * Math.sqrt(squares / Math.max(1, near.length)),
      );
    };
    const vertex = vertexWithin(turnReach);
    if (!vertex || vertex.bend >= 0) return [];
    if (turnReach < coarse / even.sampleHz) {
      const time = splinePeak(trace.times, values, about, 1 / even.sampleHz);
      return [{ time, sd: Math.hypot(vertex.timeSd, (time - vertex.time) / 2) }];
    }
    const closer = vertexWithin(closerShare * turnReach);
    const lopsided = closer && closer.bend < 0 ? stillToGo * (closer.time - vertex.time) : 0;
    const time = closer && closer.bend < 0 ? closer.time + lopsided : vertex.time;
    return [{ time, sd: Math.hypot(vertex.timeSd, lopsided) }];
  });
}

/** Highest place of the smooth curve through the samples, within one interval of `about`. */
function splinePeak(
  times: readonly number[],
  values: readonly number[],
  about: number,
  interval: number,
): number {
  const curve = naturalSpline(times, values);
  let best = about;
  for (let k = -fineness; k <= fineness; k++) {
    const time = about + (k * interval) / fineness;
    if (curve(time) > curve(best)) best = time;
  }
  return best;
}
