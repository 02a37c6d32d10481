import type { Point } from '../units/point';
import type { Scene } from '../swim-file/swim-schema';
import { type Tilt, sceneTilt } from './scene-tilt';

export type LengthUnit = 'm' | 'L' | 'px';

/**
 * How a picture point becomes a pool point: turned level, x along travel, y up, in `unit`. The origin is the
 * picture's top left corner: positions mean something only as differences, or against the surface line.
 */
export interface PoolTransform {
  readonly unit: LengthUnit;
  /** Units per picture pixel. */
  readonly perPixel: number;
  readonly tilt: Tilt;
  /** 1 when the swimmer goes right in the picture, −1 when left. */
  readonly direction: 1 | -1;
  /** False when the scene doesn't say which way the swimmer goes; right is then taken. */
  readonly travelKnown: boolean;
}

/**
 * The transform of a scene: metres when it has a scale, else body lengths when one is known in pixels, else pixels.
 *
 * @param bodyLengthPixels fingertip to toe in streamline, picture pixels; null when unknown
 * @param metresPerPixel at the swimmer, where more is known than the scene's scale alone
 */
export function poolTransform(
  scene: Scene,
  bodyLengthPixels: number | null,
  metresPerPixel = scenePixelScale(scene),
): PoolTransform {
  const tilt = sceneTilt(scene);
  const direction = scene.travel === 'left' ? -1 : 1;
  const travelKnown = scene.travel !== null;
  if (metresPerPixel !== null) return { unit: 'm', perPixel: metresPerPixel, tilt, direction, travelKnown };
  if (bodyLengthPixels !== null && bodyLengthPixels > 0) {
    return { unit: 'L', perPixel: 1 / bodyLengthPixels, tilt, direction, travelKnown };
  }
  return { unit: 'px', perPixel: 1, tilt, direction, travelKnown };
}

/** Metres per pixel of the scene's scale; null without a scale, or when its ends coincide. */
export function scenePixelScale(scene: Scene): number | null {
  if (!scene.scale) return null;
  const { a, b } = scene.scale.line;
  const pixels = Math.hypot(b.x - a.x, b.y - a.y);
  return pixels > 0 ? scene.scale.metres / pixels : null;
}

/** A picture point in the pool plane. */
export function toPool(transform: PoolTransform, point: Point): Point {
  return poolCarrier(transform)(point);
}

/** `toPool` made ready for many points of one picture. */
export function poolCarrier(transform: PoolTransform): (point: Point) => Point {
  const cos = Math.cos(transform.tilt.radians) * transform.perPixel;
  const sin = Math.sin(transform.tilt.radians) * transform.perPixel;
  const { direction } = transform;
  return (point) => ({ x: direction * (point.x * cos + point.y * sin), y: point.x * sin - point.y * cos });
}
