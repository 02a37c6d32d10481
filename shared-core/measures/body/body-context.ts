import { type LandmarkName, landmarkNames } from '../../marks/landmark';
import { knownPostures } from '../../follow/known-postures';
import { seenBodyLength } from '../../follow/seen-body-length';
import { eventTime, eventTimeVariance } from '../../marks/event-time';
import {
  type LengthUnit,
  type PoolTransform,
  poolCarrier,
  poolTransform,
  scenePixelScale,
  toPool,
} from '../../scene/pool-transform';
import { scaleUncertainty } from '../../scene/scale-uncertainty';
import { tiltVariance } from '../../scene/scene-tilt';
import type { Swimmer } from '../../swim-file/squad-schema';
import type { Posture, Swim } from '../../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../../timeline/clip-clock';
import type { MarkingError } from '../../uncertainty/marking-error';
import type { PoolPoint } from '../../units/brand';
import { type BodyLength, bodyLengthFromPostures } from './body-length';
import { type CycleFrame, cycleFrame, type TimedEvent } from './cycle-frame';

/** What the landmark readings need to know of a swim. */
export interface BodyInput {
  readonly swim: Swim;
  readonly clock: ClipClock;
  readonly error: MarkingError;
  /** The swimmer's record; null when unknown. */
  readonly swimmer: Pick<Swimmer, 'streamlineMetres' | 'bodyTable' | 'birthYear'> | null;
}

export interface TimedPosture {
  readonly posture: Posture;
  readonly time: number;
  /** The posture's landmarks in the pool plane. */
  readonly points: Readonly<Partial<Record<LandmarkName, PoolPoint>>>;
}

/** One landmark over the postures that hold it, in pool units. */
export interface LandmarkTrace {
  readonly frames: readonly number[];
  readonly times: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Standard deviation of one coordinate, pool units. */
  readonly sd: number;
}

/** A swim as the landmark readings see it: sorted, timed, turned level; traces made once and kept. */
export interface BodyContext {
  readonly input: BodyInput;
  readonly events: readonly TimedEvent[];
  readonly postures: readonly TimedPosture[];
  readonly byFrame: ReadonlyMap<number, Posture>;
  readonly transform: PoolTransform;
  readonly unit: LengthUnit;
  readonly tiltVariance: number;
  /** Relative variances of a length in `unit`. */
  readonly lengthVariance: { readonly shared: number; readonly own: number };
  readonly bodyLength: BodyLength | null;
  readonly cycles: CycleFrame | null;
  /** −1 when the swimmer lies on the back: belly and back change places in the picture. */
  readonly belly: 1 | -1;
  trace(landmark: LandmarkName): LandmarkTrace;
  pool(posture: Posture, landmark: LandmarkName): PoolPoint | null;
  landmarkSd(landmark: LandmarkName): number;
  time(frame: number): number;
}

/** Sort, time and turn a swim once for all landmark readings. Cost: linear in marks. */
export function bodyContext(given: BodyInput): BodyContext {
  const { swim, clock } = given;
  const seen = seenBodyLength(swim.postures);
  const known = knownPostures(swim, given.error, seen);
  const error: MarkingError = { ...given.error, landmarkSd: known.landmarkSd };
  const input: BodyInput = { ...given, error };
  const time = (frame: number): number => realTimeOf(clock, frame);
  const events = swim.events
    .map((event): TimedEvent => {
      return {
        event,
        time: eventTime(clock, event),
        variance: eventTimeVariance(clock, event, error.eventSd[event.kind]),
      };
    })
    .sort((a, b) => a.time - b.time);
  const byFrame = new Map<number, Posture>();
  for (const posture of known.postures) byFrame.set(posture.frame, posture);
  const bodyLength = bodyLengthFromPostures(swim.postures, given.error) ?? recordedLength(given);
  const transform = poolTransform(swim.scene, bodyLength?.pixels ?? null);
  const traces = new Map<LandmarkName, LandmarkTrace>();
  const carry = poolCarrier(transform);
  const postures = [...byFrame.values()]
    .map((posture): TimedPosture => {
      const points: Partial<Record<LandmarkName, PoolPoint>> = {};
      for (const name of landmarkNames) {
        const point = posture.points[name];
        if (point) points[name] = carry(point);
      }
      return { posture, time: time(posture.frame), points };
    })
    .sort((a, b) => a.time - b.time);
  // landmarks marked on every posture share one row of frames and times
  const everyFrame = postures.map((p) => p.posture.frame);
  const everyTime = postures.map((p) => p.time);
  const pool = (posture: Posture, landmark: LandmarkName): PoolPoint | null => {
    const point = posture.points[landmark];
    return point ? toPool(transform, point) : null;
  };
  const landmarkSd = (landmark: LandmarkName): number => error.landmarkSd[landmark] * transform.perPixel;
  return {
    input,
    events,
    postures,
    byFrame,
    transform,
    unit: transform.unit,
    tiltVariance: tiltVariance(transform.tilt, error.scenePointSd),
    lengthVariance: lengthVariance(input, transform.unit, bodyLength),
    bodyLength,
    cycles: cycleFrame(events),
    belly: swim.card.sideUp === 'back' ? -1 : 1,
    pool,
    landmarkSd,
    time,
    trace: (landmark) => {
      const kept = traces.get(landmark);
      if (kept) return kept;
      const frames: number[] = [];
      const times: number[] = [];
      const x: number[] = [];
      const y: number[] = [];
      for (const timed of postures) {
        const point = timed.points[landmark];
        // two frames at one instant can't be told apart in time: the first is kept
        if (!point || timed.time <= (times.at(-1) ?? -Infinity)) continue;
        frames.push(timed.posture.frame);
        times.push(timed.time);
        x.push(point.x);
        y.push(point.y);
      }
      const whole = frames.length === postures.length;
      const trace = {
        frames: whole ? everyFrame : frames,
        times: whole ? everyTime : times,
        x,
        y,
        sd: landmarkSd(landmark),
      };
      traces.set(landmark, trace);
      return trace;
    },
  };
}

/** The swimmer's recorded streamline, in pixels of this scene; its own spread of 1 cm is our default. */
function recordedLength(input: BodyInput): BodyLength | null {
  const metres = input.swimmer?.streamlineMetres;
  const perPixel = scenePixelScale(input.swim.scene);
  const scale = scaleUncertainty(input.swim.scene, input.error.scenePointSd);
  if (!metres || !perPixel || !scale) return null;
  const pixels = metres / perPixel;
  const relative = scale.shared + scale.own + (0.01 / metres) ** 2;
  return { pixels, variance: relative * pixels ** 2, frames: [], from: 'recorded' };
}

function lengthVariance(
  input: BodyInput,
  unit: LengthUnit,
  bodyLength: BodyLength | null,
): { shared: number; own: number } {
  if (unit === 'm') {
    const scale = scaleUncertainty(input.swim.scene, input.error.scenePointSd);
    return { shared: scale?.shared ?? 0, own: scale?.own ?? 0 };
  }
  if (unit === 'L' && bodyLength) return { shared: 0, own: bodyLength.variance / bodyLength.pixels ** 2 };
  return { shared: 0, own: 0 };
}
