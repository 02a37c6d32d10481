import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { Posture, Scene } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import type { SceneLineItem } from '../open-swim/scene-commands';

/** The laid landmark nearest to a point, or null when none is within `reach` (picture pixels). */
export function nearestLandmark(posture: Posture | null, at: Point, reach: number): LandmarkName | null {
  let best: LandmarkName | null = null;
  let bestDistance = reach;
  for (const name of landmarkNames) {
    const point = posture?.points[name];
    if (!point) continue;
    const distance = Math.hypot(point.x - at.x, point.y - at.y);
    if (distance <= bestDistance) {
      best = name;
      bestDistance = distance;
    }
  }
  return best;
}

export interface SceneEnd {
  readonly item: SceneLineItem;
  readonly end: 'a' | 'b';
}

/** The end of a scene line nearest to a point within `reach`, or null. */
export function nearestSceneEnd(scene: Scene, at: Point, reach: number): SceneEnd | null {
  let best: SceneEnd | null = null;
  let bestDistance = reach;
  for (const item of ['level', 'surface', 'scale'] as const) {
    const line = item === 'scale' ? scene.scale?.line : scene[item];
    if (!line) continue;
    for (const end of ['a', 'b'] as const) {
      const distance = Math.hypot(line[end].x - at.x, line[end].y - at.y);
      if (distance <= bestDistance) {
        best = { item, end };
        bestDistance = distance;
      }
    }
  }
  return best;
}

/** The point of a straight line nearest to a place within `reach`, or null. */
export function nearestStraightPoint(
  { straights }: Pick<Scene, 'straights'>,
  at: Point,
  reach: number,
): { readonly line: number; readonly point: number } | null {
  let best: { line: number; point: number } | null = null;
  let bestDistance = reach;
  straights.forEach((points, line) => {
    points.forEach(({ x, y }, point) => {
      const distance = Math.hypot(x - at.x, y - at.y);
      if (distance > bestDistance) return;
      best = { line, point };
      bestDistance = distance;
    });
  });
  return best;
}
