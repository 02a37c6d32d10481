import type { PoolXY } from '../model/swimmer-model';

/** How the pool plane is seen: a fixed side view. */
export interface Camera {
  readonly width: number;
  readonly height: number;
  readonly metresPerPixel: number;
  /** Picture row of the still surface. */
  readonly surfaceRow: number;
  /** Way the swimmer goes in the picture. */
  readonly travel: 'left' | 'right';
}

/** Pool metres to picture pixels (y down). */
export function toPicture(camera: Camera, point: PoolXY): PoolXY {
  const x = point.x / camera.metresPerPixel;
  return {
    x: camera.travel === 'right' ? x : camera.width - x,
    y: camera.surfaceRow - point.y / camera.metresPerPixel,
  };
}
