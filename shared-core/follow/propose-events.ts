import type { EventKind } from '../marks/event-kind';
import { heightAboveSurface } from '../scene/surface-line';
import { findPeaks } from '../signal/peaks';
import { parabolaVertex } from '../signal/parabola-vertex';
import { resampleUniform } from '../signal/resample-uniform';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, frameAtRealTime, localFrameInterval, realTimeOf } from '../timeline/clip-clock';
import { type BodyTrace, bodyTrace } from './body-trace';
import { seenBodyLength } from './seen-body-length';

/** An event the traces speak for, until the coach decides. */
export interface EventProposal {
  /** The same for the same kind and frame. */
  readonly id: string;
  readonly kind: EventKind;
  /** The nearest frame, and how far from it the instant lies, in frames. */
  readonly frame: number;
  readonly frames: number;
  /** Real seconds from the first picture, and the standard deviation. */
  readonly time: number;
  readonly sdSeconds: number;
}

interface Instant {
  readonly kind: EventKind;
  readonly time: number;
  readonly sd: number;
}

/** Times nearer than this to a marked event of the kind are that event; nearer to a rejected one, that one. Our choice. */
const sameSeconds = 0.1;
/** A trace with a hole longer than this is two traces. */
const longestHole = 0.1;
/** Half of the time around a turning point that is read as a parabola: a tenth of a quick kick. */
const turnReach = 0.055;
/** Followed points err alike from frame to frame: their spread counts this many times as large. Our default. */
const alikeness = 2;
/** No instant is known to better than this share of a frame. */
const leastFrames = 0.15;

/**
 * Proposes kick tops and bottoms from where the toe turns, hand entry and exit from where the fingertip crosses the
 * water surface line, the catch from where the hand stops going forward in front of the shoulder, and the shoulder
 * passage from where the hand passes under the shoulder. What is marked already or was rejected is left out. Ascending
 * in time. The catch needs a camera that stands still; the surface line must be set for entry and exit.
 */
export function proposeEvents(swim: Swim, clock: ClipClock): readonly EventProposal[] {
  const bodyLength = seenBodyLength(swim.postures);
  if (bodyLength === null || swim.card.view !== 'side') return [];
  const trace = (name: Parameters<typeof bodyTrace>[1]): BodyTrace =>
    bodyTrace(swim, name, clock, bodyLength);
  const found = [
    ...parts(trace('toe')).flatMap((part) => kickTurns(part, bodyLength)),
    ...(swim.card.arms === 'stroking' ? handInstants(swim, trace, bodyLength) : []),
  ];
  return found
    .map((instant) => proposalOf(instant, clock))
    .filter(
      (each) =>
        !swim.events.some(
          (mark) =>
            mark.kind === each.kind && Math.abs(realTimeOf(clock, mark.frame) - each.time) < sameSeconds,
        ) &&
        !swim.dismissed.some(
          (gone) =>
            gone.kind === each.kind && Math.abs(realTimeOf(clock, gone.frame) - each.time) < sameSeconds,
        ),
    )
    .sort((a, b) => a.time - b.time);
}

function proposalOf({ kind, time, sd }: Instant, clock: ClipClock): EventProposal {
  const under = frameAtRealTime(clock, time);
  const next = Math.min(under + 1, clock.table.starts.length - 1);
  const frame = realTimeOf(clock, next) - time < time - realTimeOf(clock, under) ? next : under;
  const interval = localFrameInterval(clock, frame);
  const frames = Math.max(-1, Math.min(1, (time - realTimeOf(clock, frame)) / interval));
  return {
    id: `${kind}-${frame}`,
    kind,
    frame,
    frames,
    time,
    sdSeconds: Math.min(10, Math.max(leastFrames * interval, sd)),
  };
}

/** A trace cut where frames are missing for long. */
function parts(trace: BodyTrace): readonly BodyTrace[] {
  const cuts: number[] = [0];
  trace.times.forEach((time, i) => {
    if (i > 0 && time - (trace.times[i - 1] ?? 0) > longestHole) cuts.push(i);
  });
  cuts.push(trace.times.length);
  return cuts.slice(1).flatMap((to, k) => {
    const from = cuts[k] ?? 0;
    return to - from < 6
      ? []
      : [
          {
            frames: trace.frames.slice(from, to),
            times: trace.times.slice(from, to),
            x: trace.x.slice(from, to),
            y: trace.y.slice(from, to),
            sd: trace.sd.slice(from, to),
          },
        ];
  });
}

function kickTurns(trace: BodyTrace, bodyLength: number): readonly Instant[] {
  const height = trace.y.map((y) => -y);
  const turns = (sign: 1 | -1, kind: EventKind): readonly Instant[] =>
    turningTimes(
      trace,
      height.map((h) => sign * h),
      0.06 * bodyLength,
    ).map((at) => ({ kind, ...at }));
  return [...turns(1, 'kick-top'), ...turns(-1, 'kick-bottom')];
}

/** Tops of a curve that stand out by `prominence`, to a part of a frame. Turns cut off by the trace's ends are none. */
function turningTimes(
  trace: Pick<BodyTrace, 'times' | 'sd'>,
  values: readonly number[],
  prominence: number,
): readonly { readonly time: number; readonly sd: number }[] {
  const even = resampleUniform(trace.times, values);
  const minGap = Math.max(2, Math.round(0.12 * even.sampleHz));
  return findPeaks(even.samples, { minProminence: prominence, minGap }).flatMap(({ index }) => {
    const about = even.startTime + index / even.sampleHz;
    const vertexWithin = (reach: number): ReturnType<typeof parabolaVertex> => {
      const near = trace.times.flatMap((time, i) =>
        Math.abs(time - about) <= Math.max(reach, 2.6 / even.sampleHz) ? [i] : [],
      );
      return parabolaVertex(
        near.map((i) => trace.times[i] ?? 0),
        near.map((i) => values[i] ?? 0),
        alikeness * Math.max(...near.map((i) => trace.sd[i] ?? 0)),
      );
    };
    const vertex = vertexWithin(turnReach);
    if (!vertex || vertex.bend >= 0) return [];
    // a turn that is steeper on one side is no parabola: how far a closer look moves it tells by how much
    const closer = vertexWithin(0.6 * turnReach);
    const lopsided = closer && closer.bend < 0 ? closer.time - vertex.time : 0;
    return [{ time: vertex.time, sd: Math.hypot(vertex.timeSd, lopsided) }];
  });
}

function handInstants(
  swim: Swim,
  trace: (name: 'fingertip' | 'wrist' | 'shoulder') => BodyTrace,
  bodyLength: number,
): readonly Instant[] {
  const fingertip = trace('fingertip');
  const surface = parts(fingertip).flatMap((part) => surfaceCrossings(swim, part, bodyLength));
  const forward = swim.scene.travel === 'left' ? -1 : 1;
  if (!swim.scene.travel) return surface;
  const wrist = trace('wrist');
  const shoulder = trace('shoulder');
  const places = (of: BodyTrace): ReadonlyMap<number, number> =>
    new Map(of.frames.map((frame, i) => [frame, i]));
  const wrists = places(wrist);
  const shoulders = places(shoulder);
  // the hand's middle against the shoulder, where all three are known
  const together = fingertip.frames.flatMap((frame, i) => {
    const w = wrists.get(frame);
    const s = shoulders.get(frame);
    if (w === undefined || s === undefined) return [];
    const x = ((fingertip.x[i] ?? 0) + (wrist.x[w] ?? 0)) / 2;
    const y = ((fingertip.y[i] ?? 0) + (wrist.y[w] ?? 0)) / 2;
    return [
      {
        frame,
        time: fingertip.times[i] ?? 0,
        x: forward * x,
        ahead: forward * (x - (shoulder.x[s] ?? 0)),
        under: y > (shoulder.y[s] ?? 0),
        sd: Math.hypot(fingertip.sd[i] ?? 0, wrist.sd[w] ?? 0) / 2 + (shoulder.sd[s] ?? 0),
      },
    ];
  });
  const passages = crossings(
    together.map(({ time }) => time),
    together.map(({ ahead }) => -ahead),
    together.map(({ sd }) => sd),
    0.05 * bodyLength,
  ).filter(({ time, rising }) => rising && (nearestOf(together, time)?.under ?? false));
  const catches = parts({
    frames: together.map(({ frame }) => frame),
    times: together.map(({ time }) => time),
    x: together.map(({ x }) => x),
    y: together.map(({ x }) => x),
    sd: together.map(({ sd }) => sd),
  }).flatMap((part) =>
    turningTimes(part, part.x, 0.02 * bodyLength).filter(({ time }) => {
      const at = nearestOf(together, time);
      return at !== null && at.ahead > 0 && at.under;
    }),
  );
  return [
    ...surface,
    ...passages.map(({ time, sd }): Instant => ({ kind: 'shoulder', time, sd })),
    ...(cameraStands(swim, shoulder, bodyLength)
      ? catches.map(({ time, sd }): Instant => ({ kind: 'catch', time, sd }))
      : []),
  ];
}

/** A swimmer who stays put in the picture is followed by the camera: then what goes backward in the water can't be seen. */
function cameraStands(swim: Swim, shoulder: BodyTrace, bodyLength: number): boolean {
  const first = shoulder.frames.length > 0 ? 0 : -1;
  const last = shoulder.frames.length - 1;
  const seconds = (shoulder.times[last] ?? 0) - (shoulder.times[first] ?? 0);
  const gone = Math.abs((shoulder.x[last] ?? 0) - (shoulder.x[first] ?? 0));
  return swim.scene.travel !== null && seconds > 0 && gone / seconds > 0.35 * bodyLength;
}

function surfaceCrossings(swim: Swim, trace: BodyTrace, bodyLength: number): readonly Instant[] {
  const heights = trace.x.map((x, i) => heightAboveSurface(swim.scene, { x, y: trace.y[i] ?? 0 })?.pixels);
  if (heights.some((height) => height === undefined)) return [];
  return crossings(trace.times, heights as number[], trace.sd, 0.025 * bodyLength).map(
    ({ time, sd, rising }): Instant => ({ kind: rising ? 'exit' : 'entry', time, sd }),
  );
}

/** Where a curve goes through zero from at least `depth` on one side to at least `depth` on the other. */
function crossings(
  times: readonly number[],
  values: readonly number[],
  sds: readonly number[],
  depth: number,
): readonly { readonly time: number; readonly sd: number; readonly rising: boolean }[] {
  const found: { time: number; sd: number; rising: boolean }[] = [];
  let side = 0;
  let lastFlip = -1;
  values.forEach((value, i) => {
    const before = values[i - 1];
    if (before !== undefined && before * value <= 0 && before !== value) lastFlip = i;
    if (Math.abs(value) < depth) return;
    const now = Math.sign(value);
    if (side !== 0 && now !== side && lastFlip > 0) {
      const from = Math.max(0, lastFlip - 3);
      const near = times.slice(from, lastFlip + 3).map((_, k) => from + k);
      const line = fittedCrossing(
        near.map((k) => times[k] ?? 0),
        near.map((k) => values[k] ?? 0),
      );
      const sd = alikeness * Math.max(...near.map((k) => sds[k] ?? 0));
      if (line && (times[lastFlip] ?? 0) - (times[lastFlip - 1] ?? 0) < longestHole)
        found.push({ time: line.time, sd: sd / Math.abs(line.slope), rising: now > 0 });
    }
    side = now;
  });
  return found;
}

/** Where a straight line through the samples is zero. */
function fittedCrossing(
  times: readonly number[],
  values: readonly number[],
): { readonly time: number; readonly slope: number } | null {
  const n = times.length;
  const t = times.reduce((sum, each) => sum + each, 0) / n;
  const v = values.reduce((sum, each) => sum + each, 0) / n;
  const tt = times.reduce((sum, each) => sum + (each - t) ** 2, 0);
  const tv = times.reduce((sum, each, i) => sum + (each - t) * ((values[i] ?? 0) - v), 0);
  if (!(tt > 0) || tv === 0) return null;
  const slope = tv / tt;
  const time = t - v / slope;
  return time >= Math.min(...times) && time <= Math.max(...times) ? { time, slope } : null;
}

function nearestOf<T extends { readonly time: number }>(list: readonly T[], time: number): T | null {
  let best: T | null = null;
  for (const each of list) if (!best || Math.abs(each.time - time) < Math.abs(best.time - time)) best = each;
  return best && Math.abs(best.time - time) < longestHole ? best : null;
}
