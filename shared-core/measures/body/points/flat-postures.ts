import type { CameraPath } from '../../../follow/camera-path';
import { landmarkNames } from '../../../marks/landmark';
import type { RectifiedScene } from '../../../scene/rectified-scene';
import type { Posture } from '../../../swim-file/swim-schema';

/**
 * Points as a camera that stands, without perspective or lens, would have seen them. Frames on which it is not known
 * where the camera looked go into `adrift`. The very same postures where nothing has to be taken out.
 */
export function flatPostures(
  given: readonly Posture[],
  camera: CameraPath,
  rectified: RectifiedScene,
  adrift: Set<number>,
): readonly Posture[] {
  const postures = steadied(given, camera, adrift);
  return rectified.changed
    ? postures.map((posture) => ({ ...posture, points: mapped(posture.points, rectified) }))
    : postures;
}

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
