import { type CameraPath, cameraPath } from '../../../follow/camera-path';
import { knownPostures } from '../../../follow/known-postures';
import { seenBodyLength } from '../../../follow/seen-body-length';
import type { LandmarkName } from '../../../marks/landmark';
import { type LengthScale, lengthScale } from '../../../scene/length-scale';
import { type LengthUnit, type PoolTransform, poolTransform } from '../../../scene/pool-transform';
import { type RectifiedScene, rectifiedScene } from '../../../scene/rectified-scene';
import { tiltVariance } from '../../../scene/scene-tilt';
import { firstAtOrAfter } from '../../../signal/first-at-or-after';
import type { Posture, Scene, Swim } from '../../../swim-file/swim-schema';
import { localFrameInterval, realTimeOf } from '../../../timeline/clip-clock';
import type { Point } from '../../../units/point';
import type { BodyInput } from './body-input';
import { type BodyLength, bodyLengthFromPostures } from './body-length';
import { flatPostures } from '../points/flat-postures';
import { type FollowedSpread, followedSpread } from '../points/followed-spread';
import { insidePicture } from '../points/inside-picture';
import { type LandmarkColumns, landmarkColumns } from '../points/landmark-column';
import type { LandmarkTrace } from '../points/landmark-trace';
import { landmarkTracer } from '../points/landmark-tracer';
import { type TimedPosture, timedPostures } from '../points/timed-posture';

/** All that landmark readings know apart from events: it stays the same object while no point and no line moves. */
export interface BodyGeometry {
  readonly postures: readonly TimedPosture[];
  readonly columns: LandmarkColumns;
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
  /** Its points were seen without a mark, save what the coach laid. */
  readonly readsSeen: boolean;
  /** How many points the machine followed or saw. */
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

/** Turn, rectify and time a swim's points once for all landmark readings. Cost: linear in points. */
export function bodyGeometry(input: BodyInput): BodyGeometry {
  const { swim, clock, error } = input;
  const time = (frame: number): number => realTimeOf(clock, frame);
  const rectified = rectifiedScene(swim.scene, swim.clip, middleOf(swim), error.scenePointSd);
  const { scene } = rectified;
  const seenLength = swim.followed.length === 0 ? null : seenBodyLength(swim.postures);
  const known = knownPostures(swim, error, seenLength);
  const seen = insidePicture(onFilm(known.postures, clock.table.starts.length), swim.clip);
  const camera = cameraPath(swim, error.scenePointSd);
  const adrift = new Set<number>();
  const flatten = (given: readonly Posture[]): readonly Posture[] =>
    flatPostures(given, camera, rectified, adrift);
  const flat = flatten(seen.postures);
  const scale = lengthScale(rectified, error.scenePointSd);
  const bodyLength =
    bodyLengthFromPostures(
      // only what the coach marked; where nothing is followed that is all there is
      known.postures === swim.postures ? flat : flatten(insidePicture(swim.postures, swim.clip).postures),
      error,
    ) ?? recordedLength(input, scale);
  const transform = poolTransform(scene, bodyLength?.pixels ?? null, scale?.metresPerPixel ?? null);
  const postures = timedPostures(flat, known.followed, adrift, time);
  const columns = landmarkColumns(flat, transform);
  const followedCount = [...known.followed.values()].reduce((sum, names) => sum + names.length, 0);
  const spread = followedSpread(usualInterval(input));
  const landmarkSd = (landmark: LandmarkName, on?: TimedPosture): number =>
    (on?.followed.includes(landmark) ? known.followedSd : error.landmarkSd)[landmark] * transform.perPixel;
  const traces = new Map<LandmarkName, LandmarkTrace>();
  const frames = postures.map((posture) => posture.frame);
  const traced = landmarkTracer({ postures, columns, frames, anyFollowed: followedCount > 0, spread });
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
    readsSeen: known.fromSeen,
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
      const trace = traced(
        landmark,
        together(error.landmarkSd[landmark]),
        together(known.followedSd[landmark]),
      );
      traces.set(landmark, trace);
      return trace;
    },
  };
}

/** Postures on pictures there are: the array itself where all are. */
const onFilm = (postures: readonly Posture[], frames: number): readonly Posture[] =>
  postures.every(({ frame }) => frame < frames) ? postures : postures.filter(({ frame }) => frame < frames);

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

/** Frame interval in the middle of what was followed, real seconds: followed points lie on consecutive frames. */
function usualInterval({ swim, clock }: BodyInput): number {
  const run = swim.followed[swim.followed.length >> 1];
  return localFrameInterval(clock, run ? run.frame + (run.points.length >> 1) : 0);
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
