import { type CameraPath, cameraPath } from '../../follow/camera-path';
import { knownPostures } from '../../follow/known-postures';
import { seenBodyLength } from '../../follow/seen-body-length';
import { type LandmarkName, landmarkNames } from '../../marks/landmark';
import { type LengthScale, lengthScale } from '../../scene/length-scale';
import { type LengthUnit, type PoolTransform, poolCarrier, poolTransform } from '../../scene/pool-transform';
import { type RectifiedScene, rectifiedScene } from '../../scene/rectified-scene';
import { tiltVariance } from '../../scene/scene-tilt';
import { firstAtOrAfter } from '../../signal/first-at-or-after';
import type { Posture, Scene, Swim } from '../../swim-file/swim-schema';
import { localFrameInterval, realTimeOf } from '../../timeline/clip-clock';
import { type Point, type PoolPoint, poolPoint } from '../../units/brand';
import type { BodyInput } from './body-context';
import { type BodyLength, bodyLengthFromPostures } from './body-length';
import { insidePicture } from './inside-picture';
import { type FollowedSpread, followedSpread } from './followed-spread';
import type { FollowedSamples, LandmarkTrace } from './landmark-trace';

/** The landmarks of one frame, marked and followed, ready to be read. */
export interface TimedPosture {
  /** Its place among the swim's postures, from 0. */
  readonly place: number;
  readonly frame: number;
  readonly time: number;
  /** In the rectified picture, pixels. */
  readonly picture: Posture['points'];
  /** Those of them that the machine followed. */
  readonly followed: readonly LandmarkName[];
  /** The camera moved, and where it looked on this frame is not known: its points are of no use along with other frames'. */
  readonly adrift: boolean;
}

/** A landmark's places in the pool plane, posture by posture; NaN where it isn't known. */
export interface LandmarkColumn {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** All that landmark readings know apart from events: it stays the same object while no point and no line moves. */
export interface BodyGeometry {
  readonly postures: readonly TimedPosture[];
  /** Columns, not a point object for each mark: a minute of traces holds tens of thousands of them. */
  readonly columns: Readonly<Record<LandmarkName, LandmarkColumn>>;
  /** Frames of the postures, in their order: one row that all traces and readings of every posture share. */
  readonly frames: readonly number[];
  readonly rectified: RectifiedScene;
  /** What the camera did; where it is carried, its movement is taken out of all points. */
  readonly camera: CameraPath;
  /** The scene in the rectified picture. */
  readonly scene: Scene;
  readonly scale: LengthScale | null;
  readonly transform: PoolTransform;
  readonly unit: LengthUnit;
  readonly tiltVariance: number;
  /** Relative variances of a length in `unit`. */
  readonly lengthVariance: { readonly shared: number; readonly own: number };
  readonly bodyLength: BodyLength | null;
  /** How many points of a landmark lie outside the picture and are not read; landmarks with none are left out. */
  readonly outside: ReadonlyMap<LandmarkName, number>;
  /** How many points the machine followed. */
  readonly followedCount: number;
  readonly followedSpread: FollowedSpread;
  /** Standard deviation of one followed coordinate, pixels of the picture. */
  readonly followedSd: Readonly<Record<LandmarkName, number>>;
  /** The posture on that frame, if there is one. */
  postureAt(frame: number): TimedPosture | undefined;
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
  const seenLength = swim.followed.length === 0 ? null : seenBodyLength(swim.postures);
  const known = knownPostures(swim, error, seenLength);
  const seen = insidePicture(known.postures, swim.clip);
  const camera = cameraPath(swim, error.scenePointSd);
  const adrift = new Set<number>();
  const flatten = (given: readonly Posture[]): readonly Posture[] => {
    const postures = steadied(given, camera, adrift);
    return rectified.changed
      ? postures.map((posture) => ({ ...posture, points: mapped(posture.points, rectified) }))
      : postures;
  };
  const scale = lengthScale(rectified, error.scenePointSd);
  const bodyLength =
    bodyLengthFromPostures(flatten(insidePicture(swim.postures, swim.clip).postures), error) ??
    recordedLength(input, scale);
  const transform = poolTransform(scene, bodyLength?.pixels ?? null, scale?.metresPerPixel ?? null);
  const flat = flatten(seen.postures);
  const postures = timedPostures(flat, known.followed, adrift, time);
  const columns = poolColumns(flat, transform);
  const followedCount = [...known.followed.values()].reduce((sum, names) => sum + names.length, 0);
  const spread = followedSpread(usualInterval(input));
  const landmarkSd = (landmark: LandmarkName, on?: TimedPosture): number =>
    (on?.followed.includes(landmark) ? known.followedSd : error.landmarkSd)[landmark] * transform.perPixel;
  const traces = new Map<LandmarkName, LandmarkTrace>();
  const frames = postures.map((posture) => posture.frame);
  const maker = traceMaker(postures, columns, frames, followedCount > 0, spread);
  return {
    postures,
    columns,
    frames,
    postureAt: (frame) => {
      const place = firstAtOrAfter(frames, frame);
      return frames[place] === frame ? postures[place] : undefined;
    },
    rectified,
    camera,
    scene,
    scale,
    transform,
    unit: transform.unit,
    tiltVariance: tiltVariance(transform.tilt, error.scenePointSd),
    lengthVariance: lengthVariance(transform.unit, scale, bodyLength),
    bodyLength,
    outside: seen.outside,
    followedCount,
    followedSpread: spread,
    followedSd: known.followedSd,
    landmarkSd,
    time,
    trace: (landmark) => {
      const kept = traces.get(landmark);
      if (kept) return kept;
      const swayed = camera.state === 'carried' ? camera.sd : 0;
      const together = (sd: number): number => Math.hypot(sd, swayed) * transform.perPixel;
      const trace = maker(
        landmark,
        together(error.landmarkSd[landmark]),
        together(known.followedSd[landmark]),
      );
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

/** Points as a camera that stands would have seen them; frames on which that is not known go into `adrift`. */
function steadied(postures: readonly Posture[], camera: CameraPath, adrift: Set<number>): readonly Posture[] {
  if (camera.state !== 'carried') return postures;
  return postures.map((posture) => {
    const moved = camera.steady(posture.frame, { x: 0, y: 0 });
    if (!moved) {
      adrift.add(posture.frame);
      return posture;
    }
    const points: Posture['points'] = {};
    for (const name of landmarkNames) {
      const point = posture.points[name];
      if (point) points[name] = { x: point.x + moved.x, y: point.y + moved.y };
    }
    return { ...posture, points };
  });
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
  adrift: ReadonlySet<number>,
  time: (frame: number) => number,
): readonly TimedPosture[] {
  // ascending by frame, and so by time
  return flat.map(({ frame, points: picture }, place) => ({
    place,
    frame,
    time: time(frame),
    picture,
    followed: followed.get(frame) ?? nothingFollowed,
    adrift: adrift.has(frame),
  }));
}

function poolColumns(
  flat: readonly Posture[],
  transform: PoolTransform,
): Record<LandmarkName, LandmarkColumn> {
  const carry = poolCarrier(transform);
  const column = (name: LandmarkName): LandmarkColumn => {
    const x = new Float64Array(flat.length);
    const y = new Float64Array(flat.length);
    for (let i = 0; i < flat.length; i++) {
      const point = flat[i]?.points[name];
      const at = point && carry(point);
      x[i] = at ? at.x : Number.NaN;
      y[i] = at ? at.y : Number.NaN;
    }
    return { x, y };
  };
  return {
    fingertip: column('fingertip'),
    wrist: column('wrist'),
    elbow: column('elbow'),
    shoulder: column('shoulder'),
    ear: column('ear'),
    hip: column('hip'),
    knee: column('knee'),
    ankle: column('ankle'),
    toe: column('toe'),
  };
}

/** A landmark of one posture in the pool plane; undefined where it isn't known. */
export function pointAt(column: LandmarkColumn, place: number): PoolPoint | undefined {
  const [x, y] = [column.x[place], column.y[place]];
  return x === undefined || y === undefined || Number.isNaN(x) ? undefined : poolPoint(x, y);
}

/** Frame interval in the middle of what was followed, real seconds: followed points lie on consecutive frames. */
function usualInterval({ swim, clock }: BodyInput): number {
  const run = swim.followed[swim.followed.length >> 1];
  return localFrameInterval(clock, run ? run.frame + (run.points.length >> 1) : 0);
}

/** Makes traces; those of landmarks seen on the same postures share one row of frames and times, and of weights. */
function traceMaker(
  postures: readonly TimedPosture[],
  columns: BodyGeometry['columns'],
  everyFrame: readonly number[],
  anyFollowed: boolean,
  spread: FollowedSpread,
): (landmark: LandmarkName, sd: number, followedSd: number) => LandmarkTrace {
  const everyTime = postures.map((p) => p.time);
  const shared = new Map<string, FollowedSamples>();
  return (landmark, sd, followedSd) => {
    const frames: number[] = [];
    const times: number[] = [];
    const x: number[] = [];
    const y: number[] = [];
    const is: boolean[] = [];
    const column = columns[landmark];
    let last = -Infinity;
    for (const timed of postures) {
      const here = column.x[timed.place] as number;
      // two frames at one instant can't be told apart in time: the first is kept
      if (Number.isNaN(here) || timed.adrift || timed.time <= last) continue;
      last = timed.time;
      frames.push(timed.frame);
      times.push(timed.time);
      x.push(here);
      y.push(column.y[timed.place] as number);
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
