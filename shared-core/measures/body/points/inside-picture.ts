import { type LandmarkName, landmarkNames } from '../../../marks/landmark';
import type { Posture, Swim } from '../../../swim-file/swim-schema';

export interface InsidePicture {
  readonly postures: readonly Posture[];
  /** How many points of a landmark lie outside the picture; landmarks with none are left out. */
  readonly outside: ReadonlyMap<LandmarkName, number>;
}

type PictureSize = Pick<Swim['clip'], 'width' | 'height'>;

/** Whether a point lies in the shown picture, its edges included; pixels. */
export function isInPicture(
  { x, y }: { readonly x: number; readonly y: number },
  { width, height }: PictureSize,
): boolean {
  return x >= 0 && x <= width && y >= 0 && y <= height;
}

const none: ReadonlyMap<LandmarkName, number> = new Map();

/**
 * Postures without the points that lie outside the picture: nobody saw those, so nothing is read from them. Edges are
 * inside. The very same postures where all points are. Cost: linear in points.
 */
export function insidePicture(postures: readonly Posture[], clip: PictureSize): InsidePicture {
  let outside: Map<LandmarkName, number> | null = null;
  let kept: Posture[] | null = null;
  for (let i = 0; i < postures.length; i++) {
    const posture = postures[i] as Posture;
    let points: Posture['points'] | null = null;
    for (const name of landmarkNames) {
      const point = posture.points[name];
      if (!point || isInPicture(point, clip)) continue;
      points ??= { ...posture.points };
      delete points[name];
      outside ??= new Map();
      outside.set(name, (outside.get(name) ?? 0) + 1);
    }
    if (points) kept ??= postures.slice(0, i);
    kept?.push(points ? { ...posture, points } : posture);
  }
  return { postures: kept ?? postures, outside: outside ?? none };
}
