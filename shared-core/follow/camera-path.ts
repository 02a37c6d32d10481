import type { Scene, Swim } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { type Background, type BackgroundCurve, backgroundCurve } from './background-curve';

/** What a swim's film says of its camera. */
export type CameraPath =
  /** It stood still, or nothing is known of it. */
  | {
      readonly state: 'stands';
      /** Whether the background was looked at from the first posture to the last. */
      readonly looked: boolean;
    }
  /** It moved, and nothing says by how much at the swimmer. */
  | { readonly state: 'loose' }
  /** It turned or zoomed, and that is not taken out. */
  | { readonly state: 'turned' }
  | SteadyCamera;

/** It moved, and where a point lies in the pool is known all the same. */
interface SteadyCamera {
  readonly state: 'carried';
  /** Where a picture point would lie if the camera had stood as on the scene's frame; null where that is not known. */
  steady(frame: number, point: Point): Point | null;
  /** Standard deviation of where a frame's points come to lie, pixels, an axis. */
  readonly sd: number;
  /** Variance that the path adds to a speed read between two real instants on two frames, (pixels a second)². */
  speedVariance(from: number, to: number, seconds: number): number;
  /** The same for a distance between two frames, pixels². */
  distanceVariance(from: number, to: number): number;
}

/** A background that went less far than this share of the picture's width is a camera that stood still. Our choice. */
const stillShare = 0.002;
/** Up to this share a camera that swayed is believed without a thing that stands still. Our choice. */
const swayShare = 0.01;
/**
 * A picture that turned by more than this, degrees, or whose sizes changed by more than this share: what lies away from its
 * middle moved by one or two hundredths of the way there. Our choice; on drawn clips whose camera neither turned nor zoomed 0.14
 * degrees and, of a camera carried along, 1.4 % were seen at most (docs/performance-tables.md).
 */
const turnLimit = { degrees: 0.6, zoom: 0.02 };
/**
 * Things in the swimmer's plane move by as much as the background (a turning camera) or by up to twice as much (a carried
 * one, with a wall as far behind the swimmer as the camera is before). Middle, and standard deviation. Our default.
 */
const likelyTimes = { value: 1.3, sd: 0.3 };
/** A thing beside the swimmer is nearer or farther than the swimmer by this share of the camera's distance. Our default. */
const offPlaneShare = 0.01;

/**
 * The camera's movement, from how the background moved while points were followed, and from things that stand still in
 * the swimmer's plane and were marked on some frames: these say how many times as far the swimmer's plane moved.
 *
 * @param markSd standard deviation of a marked point of the scene, one axis, pixels
 */
export function cameraPath(
  swim: Pick<Swim, 'cameraPath' | 'scene' | 'clip' | 'postures'>,
  markSd: number,
): CameraPath {
  if (swim.cameraPath.length === 0) return { state: 'stands', looked: false };
  const { width } = swim.clip;
  const looked = cameraLooked(swim);
  const turnedFar = swim.cameraPath.some(
    ({ turned }) => turned && (turned.degrees > turnLimit.degrees || turned.zoom > turnLimit.zoom),
  );
  if (turnedFar) return { state: 'turned' };
  const background = backgroundCurve(swim.cameraPath, stillShare * width);
  if (!background) return { state: 'loose' };
  if (background.range < stillShare * width) return { state: 'stands', looked };
  const times = timesOf(background, swim.scene.still, markSd);
  if (times) return carried(background, times, swim.scene);
  return background.range < swayShare * width
    ? carried(background, { ...likelyTimes, variance: likelyTimes.sd ** 2 }, swim.scene)
    : { state: 'loose' };
}

/** Whether one look at the background goes from the first posture to the last: then no slow drift was missed. */
export function cameraLooked({ cameraPath: path, postures }: Pick<Swim, 'cameraPath' | 'postures'>): boolean {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { frame } of postures) {
    first = Math.min(first, frame);
    last = Math.max(last, frame);
  }
  return path.some(({ frames }) => (frames[0] as number) <= first && (frames.at(-1) ?? 0) >= last);
}

/** How many times as far as the background the swimmer's plane moves, and the variance of that. */
interface Times {
  readonly value: number;
  readonly variance: number;
}

const curveAt = ({ curves }: Background, frame: number): BackgroundCurve | undefined =>
  curves.find(({ first, last }) => frame >= first && frame <= last);

/** By least squares over every thing that stands still, each on the frames of one curve. Null when none moved far enough. */
function timesOf(background: Background, still: Scene['still'], markSd: number): Times | null {
  let bb = 0;
  let mb = 0;
  for (const curve of background.curves)
    for (const thing of still) {
      const marks = thing.filter(({ frame }) => frame >= curve.first && frame <= curve.last);
      const ways = marks.map(({ frame }) => curve.at(frame));
      const mean = (of: readonly Point[]): Point => ({
        x: of.reduce((sum, { x }) => sum + x, 0) / of.length,
        y: of.reduce((sum, { y }) => sum + y, 0) / of.length,
      });
      if (marks.length < 2) continue;
      const [m, b] = [mean(marks), mean(ways)];
      marks.forEach((mark, i) => {
        const way = ways[i] ?? b;
        bb += (way.x - b.x) ** 2 + (way.y - b.y) ** 2;
        mb += (mark.x - m.x) * (way.x - b.x) + (mark.y - m.y) * (way.y - b.y);
      });
    }
  if (!(bb > 0)) return null;
  const value = mb / bb;
  const variance = (markSd ** 2 + (value * background.sd) ** 2) / bb;
  // a tenth of itself is no help to a speed
  return value > 0 && variance < (0.1 * value) ** 2 ? { value, variance } : null;
}

function carried(background: Background, times: Times, scene: Scene): SteadyCamera {
  const offsets = curveOffsets(background, times, scene);
  const place = (frame: number): Point | null => {
    const curve = curveAt(background, frame);
    const offset = curve && offsets.get(curve);
    if (!curve || !offset) return null;
    const { x, y } = curve.at(frame);
    return { x: times.value * x + offset.x, y: times.value * y + offset.y };
  };
  const drawn = scene.scale?.frame ?? scene.plane?.frame;
  const origin = (drawn === undefined ? null : place(drawn)) ?? place(background.curves[0]?.first ?? 0);
  const distanceVariance = (from: number, to: number): number => {
    const [a, b] = [place(from), place(to)];
    if (!a || !b) return 0;
    const way = Math.hypot(b.x - a.x, b.y - a.y);
    const relative = times.variance / times.value ** 2 + offPlaneShare ** 2;
    return way ** 2 * relative + 2 * (times.value * background.sd) ** 2;
  };
  return {
    state: 'carried',
    steady: (frame, { x, y }) => {
      const at = place(frame);
      return at && origin && { x: x - (at.x - origin.x), y: y - (at.y - origin.y) };
    },
    sd: times.value * background.sd,
    distanceVariance,
    speedVariance: (from, to, seconds) => (seconds > 0 ? distanceVariance(from, to) / seconds ** 2 : 0),
  };
}

/** Where each curve begins against the first: told by a thing that is marked on both; absent where nothing tells it. */
function curveOffsets(
  background: Background,
  times: Times,
  { still }: Pick<Scene, 'still'>,
): ReadonlyMap<BackgroundCurve, Point> {
  const offsets = new Map<BackgroundCurve, Point>();
  for (const curve of background.curves) {
    if (offsets.size === 0) {
      offsets.set(curve, { x: 0, y: 0 });
      continue;
    }
    const links = still.flatMap((thing) => {
      const places = (of: BackgroundCurve, offset: Point): readonly Point[] =>
        thing.flatMap(({ frame, x, y }) => {
          if (frame < of.first || frame > of.last) return [];
          const way = of.at(frame);
          return [{ x: x - times.value * way.x - offset.x, y: y - times.value * way.y - offset.y }];
        });
      const here = places(curve, { x: 0, y: 0 });
      const known = [...offsets].flatMap(([other, offset]) => places(other, offset));
      return here.flatMap((at) => known.map((was) => ({ x: at.x - was.x, y: at.y - was.y })));
    });
    if (links.length > 0)
      offsets.set(curve, {
        x: links.reduce((sum, { x }) => sum + x, 0) / links.length,
        y: links.reduce((sum, { y }) => sum + y, 0) / links.length,
      });
  }
  return offsets;
}
