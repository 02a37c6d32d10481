import type { Scene } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { applyHomography, type Homography, homographyFromPoints } from './homography';
import { distortionFromLines } from './plumb-lines';
import { type RadialDistortion, straightenPoint } from './radial-distortion';

/** The pool-plane rectangle as it was used. */
interface RectifiedPlane {
  /** Relative variance of a length that the marking of the four corners brings, near `around`. */
  readonly cornerVariance: number;
  readonly metresPerPixel: number;
}

/**
 * A scene as a straight camera facing the swimmer's plane would have seen it: lens bend taken out by the lines that are
 * straight in the pool, perspective by the plane's rectangle. Points, lines and lengths in it are still pixels, with y
 * down, so that everything after it need not know.
 */
export interface RectifiedScene {
  readonly scene: Scene;
  /** Where a picture point lies in the rectified picture; null where lens or plane carry it nowhere. */
  readonly map: (point: Point) => Point | null;
  /** False when nothing had to be done: `map` then gives every point back as it is. */
  readonly changed: boolean;
  readonly lens: RadialDistortion | null;
  readonly plane: RectifiedPlane | null;
  /** Straight lines or a plane were marked, and no lens or plane fits them. */
  readonly unfit: readonly ('straights' | 'plane')[];
}

/** Points beyond two a line that a second lens term needs before it is fitted. Our default. */
const sparesForTwoTerms = 8;

/** Relative standard deviation of the rectangle's own sides: 1 %. Our default, no source. */
const sideRelativeSd = 0.01;

/**
 * Take lens and perspective out of a scene.
 *
 * @param around picture point near which the plane's pixels are to keep their size: the middle of the marks; null: the
 *   middle of the rectangle
 * @param scenePointSd standard deviation of a marked corner, pixels per axis
 * @see Brown 1971 (plumb lines); Hartley & Zisserman, algorithm 4.2 (homography)
 */
export function rectifiedScene(
  scene: Scene,
  picture: { readonly width: number; readonly height: number },
  around: Point | null,
  scenePointSd: number,
): RectifiedScene {
  const unfit: ('straights' | 'plane')[] = [];
  const lens = scene.straights.length > 0 ? lensOf(scene, picture) : null;
  if (scene.straights.length > 0 && !lens) unfit.push('straights');
  const straight = lens ? (point: Point) => straightenPoint(lens, point) : (point: Point): Point => point;
  const found = scene.plane ? planeOf(scene.plane, straight, around, scenePointSd) : null;
  if (scene.plane && !found) unfit.push('plane');
  const map = found
    ? (point: Point): Point | null => {
        const flat = straight(point);
        return flat && found.carry(flat);
      }
    : straight;
  if (!lens && !found) return { scene, map, changed: false, lens, plane: null, unfit };
  const line = <T extends { readonly a: Point; readonly b: Point }>(given: T | null): T | null => {
    const a = given && map(given.a);
    const b = given && map(given.b);
    return given && a && b ? { ...given, a, b } : null;
  };
  const scaleLine = scene.scale && line(scene.scale.line);
  return {
    scene: {
      ...scene,
      // the rectangle's upper side is level, unless a level line says better
      level: line(scene.level) ?? (scene.surface ? null : (found?.side ?? null)),
      surface: line(scene.surface),
      scale: found
        ? {
            line: found.side,
            metres: found.alongMetres,
            metresSd: sideRelativeSd * found.alongMetres,
            preset: null,
            frame: scene.plane?.frame ?? 0,
          }
        : scene.scale && scaleLine && { ...scene.scale, line: scaleLine },
    },
    map,
    changed: true,
    lens,
    plane: found && { cornerVariance: found.cornerVariance, metresPerPixel: found.metresPerPixel },
    unfit,
  };
}

/** Lens from the scene's straight lines, about the middle of the picture, in units of half its diagonal. */
function lensOf(scene: Scene, { width, height }: { width: number; height: number }): RadialDistortion | null {
  const spare = scene.straights.reduce((sum, line) => sum + line.length - 2, 0);
  const centre = { x: width / 2, y: height / 2 };
  const reach = Math.hypot(width, height) / 2;
  const terms = spare >= sparesForTwoTerms ? 2 : 1;
  return (
    distortionFromLines(scene.straights, centre, reach, terms)?.lens ??
    (terms === 2 ? (distortionFromLines(scene.straights, centre, reach, 1)?.lens ?? null) : null)
  );
}

interface FoundPlane {
  readonly carry: (point: Point) => Point | null;
  readonly side: { readonly a: Point; readonly b: Point };
  readonly alongMetres: number;
  readonly metresPerPixel: number;
  readonly cornerVariance: number;
}

type Corners = readonly [Point, Point, Point, Point];

function planeOf(
  plane: NonNullable<Scene['plane']>,
  straight: (point: Point) => Point | null,
  around: Point | null,
  scenePointSd: number,
): FoundPlane | null {
  const corners = plane.corners.map(straight);
  const [a, b, c, d] = corners;
  if (!a || !b || !c || !d) return null;
  const marked: Corners = [a, b, c, d];
  // sides may run either way in the picture: their own way is kept, or the picture would be mirrored
  const way = b.x < a.x ? -1 : 1;
  const { alongMetres } = plane;
  const upMetres = c.y + d.y < a.y + b.y ? -plane.upMetres : plane.upMetres;
  const metres: Corners = [
    { x: 0, y: 0 },
    { x: way * alongMetres, y: 0 },
    { x: way * alongMetres, y: upMetres },
    { x: 0, y: upMetres },
  ];
  const toMetres = homographyFromPoints(marked, metres);
  const middle = (around && straight(around)) ?? {
    x: (a.x + b.x + c.x + d.x) / 4,
    y: (a.y + b.y + c.y + d.y) / 4,
  };
  const metresPerPixel = toMetres && localScale(toMetres, middle);
  if (!toMetres || !metresPerPixel || !convex(marked)) return null;
  // one side of the horizon only: beyond it the plane runs backward
  const ahead = Math.sign(depth(toMetres, a));
  return {
    carry: (point) => {
      if (Math.sign(depth(toMetres, point)) !== ahead) return null;
      const at = applyHomography(toMetres, point);
      return at && { x: at.x / metresPerPixel, y: at.y / metresPerPixel };
    },
    side: { a: { x: 0, y: 0 }, b: { x: (way * alongMetres) / metresPerPixel, y: 0 } },
    alongMetres,
    metresPerPixel,
    cornerVariance: cornerVariance(marked, metres, middle, scenePointSd),
  };
}

const depth = (h: Homography, p: Point): number => h[6] * p.x + h[7] * p.y + h[8];

/** Four corners in order around make a rectangle's picture only when they turn one way. */
function convex(corners: Corners): boolean {
  const turns = corners.map((p, i) => {
    const q = corners[(i + 1) % 4] ?? p;
    const r = corners[(i + 2) % 4] ?? p;
    return Math.sign((q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x));
  });
  return turns.every((turn) => turn !== 0 && turn === turns[0]);
}

/** Metres per pixel around a point: root of the area that a small square takes; null at the horizon. */
function localScale(h: Homography, at: Point): number | null {
  const step = 0.5;
  const o = applyHomography(h, at);
  const x = applyHomography(h, { x: at.x + step, y: at.y });
  const y = applyHomography(h, { x: at.x, y: at.y + step });
  if (!o || !x || !y) return null;
  const area = Math.abs((x.x - o.x) * (y.y - o.y) - (x.y - o.y) * (y.x - o.x));
  const scale = Math.sqrt(area) / step;
  return scale > 0 && Number.isFinite(scale) ? scale : null;
}

/**
 * Relative variance of lengths around a point from the marking of the corners, first order: the larger of that along
 * the plane and that square to it.
 */
function cornerVariance(corners: Corners, metres: Corners, at: Point, sd: number): number {
  if (!(sd > 0)) return 0;
  const reach = 20;
  const lengths = (moved: Corners): readonly [number, number] | null => {
    const h = homographyFromPoints(moved, metres);
    if (!h) return null;
    const length = (dx: number, dy: number): number => {
      const p = applyHomography(h, { x: at.x - dx, y: at.y - dy });
      const q = applyHomography(h, { x: at.x + dx, y: at.y + dy });
      return p && q ? Math.hypot(q.x - p.x, q.y - p.y) : Number.NaN;
    };
    return [length(reach, 0), length(0, reach)];
  };
  const base = lengths(corners);
  if (!base) return 0;
  const variance: [number, number] = [0, 0];
  const step = 0.01;
  corners.forEach((corner, i) => {
    for (const axis of ['x', 'y'] as const) {
      const moved = corners.map((each, j) =>
        j === i ? { ...corner, [axis]: corner[axis] + step } : each,
      ) as unknown as Corners;
      const found = lengths(moved);
      if (!found) continue;
      for (const k of [0, 1] as const) variance[k] += (((found[k] - base[k]) / base[k] / step) * sd) ** 2;
    }
  });
  return Math.max(...variance);
}
