import { knownPostures } from '../../follow/known-postures';
import { seenBodyLength } from '../../follow/seen-body-length';
import { type LandmarkName, landmarkNames } from '../../marks/landmark';
import { type LengthScale, lengthScale } from '../../scene/length-scale';
import { type LengthUnit, type PoolTransform, poolCarrier, poolTransform } from '../../scene/pool-transform';
import { type RectifiedScene, rectifiedScene } from '../../scene/rectified-scene';
import { tiltVariance } from '../../scene/scene-tilt';
import type { Posture, Scene, Swim } from '../../swim-file/swim-schema';
import { localFrameInterval, realTimeOf } from '../../timeline/clip-clock';
import type { Point, PoolPoint } from '../../units/brand';
import type { BodyInput } from './body-context';
import { type BodyLength, bodyLengthFromPostures } from './body-length';
import { type FollowedSpread, followedSpread } from './followed-spread';
import type { FollowedSamples, LandmarkTrace } from './landmark-trace';

/** The landmarks of one frame, marked and followed, ready to be read. */
export interface TimedPosture {
  readonly frame: number;
  readonly time: number;
  /** In the rectified picture, pixels. */
  readonly picture: Posture['points'];
  /** In the pool plane. */
  readonly points: Readonly<Partial<Record<LandmarkName, PoolPoint>>>;
  /** Those of them that the machine followed. */
  readonly followed: readonly LandmarkName[];
}

/** All that landmark readings know apart from events: it stays the same object while no point and no line moves. */
export interface BodyGeometry {
  readonly postures: readonly TimedPosture[];
  readonly byFrame: ReadonlyMap<number, TimedPosture>;
  readonly rectified: RectifiedScene;
  /** The scene in the rectified picture. */
  readonly scene: Scene;
  readonly scale: LengthScale | null;
  readonly transform: PoolTransform;
  readonly unit: LengthUnit;
  readonly tiltVariance: number;
  /** Relative variances of a length in `unit`. */
  readonly lengthVariance: { readonly shared: number; readonly own: number };
  readonly bodyLength: BodyLength | null;
  /** How many points the machine followed. */
  readonly followedCount: number;
  readonly followedSpread: FollowedSpread;
  /** Standard deviation of one followed coordinate, pixels of the picture. */
  readonly followedSd: Readonly<Record<LandmarkName, number>>;
  trace(landmark: LandmarkName): LandmarkTrace;
  /** Standard deviation of one marked coordinate, pool units; of a followed one on that posture. */
  landmarkSd(landmark: LandmarkName, on?: TimedPosture): number;
  time(frame: number): number;
}

const nothingFollowed: readonly LandmarkName[] = [];

/** Turn, rectify and time a swim's points once for all landmark readings. Cost: linear in points. */
export function bodyGeometry(input: BodyInput): BodyGeometry {
  const { swim, clock, error } = input;
  const time = (frame: number): number => realTimeOf(clock, frame);
  const rectified = rectifiedScene(swim.scene, swim.clip, middleOf(swim), error.scenePointSd);
  const { scene } = rectified;
  const known = knownPostures(swim, error, seenBodyLength(swim.postures));
  const flatten = (postures: readonly Posture[]): readonly Posture[] =>
    rectified.changed
      ? postures.map((posture) => ({ ...posture, points: mapped(posture.points, rectified) }))
      : postures;
  const scale = lengthScale(rectified, error.scenePointSd);
  const bodyLength = bodyLengthFromPostures(flatten(swim.postures), error) ?? recordedLength(input, scale);
  const transform = poolTransform(scene, bodyLength?.pixels ?? null, scale?.metresPerPixel ?? null);
  const postures = timedPostures(flatten(known.postures), known.followed, transform, time);
  const followedCount = [...known.followed.values()].reduce((sum, names) => sum + names.length, 0);
  const spread = followedSpread(usualInterval(input));
  const landmarkSd = (landmark: LandmarkName, on?: TimedPosture): number =>
    (on?.followed.includes(landmark) ? known.followedSd : error.landmarkSd)[landmark] * transform.perPixel;
  const traces = new Map<LandmarkName, LandmarkTrace>();
  const maker = traceMaker(postures, followedCount > 0, spread);
  return {
    postures,
    byFrame: new Map(postures.map((posture) => [posture.frame, posture])),
    rectified,
    scene,
    scale,
    transform,
    unit: transform.unit,
    tiltVariance: tiltVariance(transform.tilt, error.scenePointSd),
    lengthVariance: lengthVariance(transform.unit, scale, bodyLength),
    bodyLength,
    followedCount,
    followedSpread: spread,
    followedSd: known.followedSd,
    landmarkSd,
    time,
    trace: (landmark) => {
      const kept = traces.get(landmark);
      if (kept) return kept;
      const followedSd = known.followedSd[landmark] * transform.perPixel;
      const trace = maker(landmark, landmarkSd(landmark), followedSd);
      traces.set(landmark, trace);
      return trace;
    },
  };
}

/** Middle of all marked points, near which a plane's pixels keep their size; null of none. */
function middleOf(swim: Swim): Point | null {
  if (!swim.scene.plane) return null;
  let x = 0;
  let y = 0;
  let n = 0;
  for (const { points } of swim.postures)
    for (const point of Object.values(points)) {
      x += point.x;
      y += point.y;
      n += 1;
    }
  return n > 0 ? { x: x / n, y: y / n } : null;
}

function mapped(points: Posture['points'], { map }: RectifiedScene): Posture['points'] {
  const out: Posture['points'] = {};
  for (const name of landmarkNames) {
    const point = points[name];
    const at = point && map(point);
    if (at) out[name] = { x: at.x, y: at.y };
  }
  return out;
}

function timedPostures(
  flat: readonly Posture[],
  followed: ReadonlyMap<number, readonly LandmarkName[]>,
  transform: PoolTransform,
  time: (frame: number) => number,
): readonly TimedPosture[] {
  const carry = poolCarrier(transform);
  return flat
    .map(({ frame, points: picture }): TimedPosture => {
      const points: Partial<Record<LandmarkName, PoolPoint>> = {};
      for (const name of landmarkNames) {
        const point = picture[name];
        if (point) points[name] = carry(point);
      }
      return { frame, time: time(frame), picture, points, followed: followed.get(frame) ?? nothingFollowed };
    })
    .sort((a, b) => a.time - b.time);
}

/** Frame interval in the middle of what was followed, real seconds: followed points lie on consecutive frames. */
function usualInterval({ swim, clock }: BodyInput): number {
  const run = swim.followed[swim.followed.length >> 1];
  return localFrameInterval(clock, run ? run.frame + (run.points.length >> 1) : 0);
}

/** Makes traces; those of landmarks seen on the same postures share one row of frames and times, and of weights. */
function traceMaker(
  postures: readonly TimedPosture[],
  anyFollowed: boolean,
  spread: FollowedSpread,
): (landmark: LandmarkName, sd: number, followedSd: number) => LandmarkTrace {
  const everyFrame = postures.map((p) => p.frame);
  const everyTime = postures.map((p) => p.time);
  const shared = new Map<string, FollowedSamples>();
  return (landmark, sd, followedSd) => {
    const frames: number[] = [];
    const times: number[] = [];
    const x: number[] = [];
    const y: number[] = [];
    const is: boolean[] = [];
    for (const timed of postures) {
      const point = timed.points[landmark];
      // two frames at one instant can't be told apart in time: the first is kept
      if (!point || timed.time <= (times.at(-1) ?? -Infinity)) continue;
      frames.push(timed.frame);
      times.push(timed.time);
      x.push(point.x);
      y.push(point.y);
      if (anyFollowed) is.push(timed.followed.includes(landmark));
    }
    const whole = frames.length === postures.length;
    return {
      frames: whole ? everyFrame : frames,
      times: whole ? everyTime : times,
      x,
      y,
      sd,
      followed: is.includes(true) ? followedSamples(is, sd, followedSd, spread, shared) : null,
    };
  };
}

function followedSamples(
  is: readonly boolean[],
  sd: number,
  followedSd: number,
  spread: FollowedSpread,
  shared: Map<string, FollowedSamples>,
): FollowedSamples {
  const share = followedSd > 0 ? (sd / followedSd) ** 2 : 1;
  const key = `${sd} ${followedSd} ${is.map((each) => (each ? 1 : 0)).join('')}`;
  const known = shared.get(key);
  if (known) return known;
  const weights = (grown: number): readonly number[] => is.map((each) => (each ? share / grown : 1));
  const made = { is, sd: followedSd, waveWeights: weights(spread.wave), slowWeights: weights(spread.slow) };
  shared.set(key, made);
  return made;
}

/** The swimmer's recorded streamline, in pixels of this scene; its own spread of 1 cm is our default. */
function recordedLength(input: BodyInput, scale: LengthScale | null): BodyLength | null {
  const metres = input.swimmer?.streamlineMetres;
  if (!metres || !scale) return null;
  const pixels = metres / scale.metresPerPixel;
  const relative = scale.shared + scale.own + (0.01 / metres) ** 2;
  return { pixels, variance: relative * pixels ** 2, frames: [], from: 'recorded' };
}

function lengthVariance(
  unit: LengthUnit,
  scale: LengthScale | null,
  bodyLength: BodyLength | null,
): { shared: number; own: number } {
  if (unit === 'm') return { shared: scale?.shared ?? 0, own: scale?.own ?? 0 };
  if (unit === 'L' && bodyLength) return { shared: 0, own: bodyLength.variance / bodyLength.pixels ** 2 };
  return { shared: 0, own: 0 };
}
