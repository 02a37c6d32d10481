import type { PoolXY } from '../model/swimmer-model';

/** How the pool is seen: from the side, level, the swimmer's plane to scale. */
export interface Camera {
  readonly width: number;
  readonly height: number;
  readonly metresPerPixel: number;
  /** Picture row of the still surface in the swimmer's plane. */
  readonly surfaceRow: number;
  /** Way the swimmer goes in the picture. */
  readonly travel: 'left' | 'right';
  /** Height of the lens over the still surface, metres; 0 sees air and water, below it the surface from underneath. */
  readonly eye: number;
  /** A camera carried along: its speed (m/s) and its sway (m, at half a turn a second); null stands still. */
  readonly carried: { readonly speed: number; readonly sway: number } | null;
}

/** Pool place (metres along travel) at the picture's trailing edge, at a real time. */
export function trailingEdge(camera: Camera, time: number): number {
  const { carried } = camera;
  return carried ? carried.speed * time + carried.sway * (1 - Math.cos(Math.PI * time)) : 0;
}

/** Pool metres in the swimmer's plane to picture pixels (y down). */
export function toPicture(camera: Camera, point: PoolXY, time: number): PoolXY {
  const x = (point.x - trailingEdge(camera, time)) / camera.metresPerPixel;
  return {
    x: camera.travel === 'right' ? x : camera.width - x,
    y: camera.surfaceRow - point.y / camera.metresPerPixel,
  };
}

/** Metres from the lens to the swimmer's plane. */
const swimmerDistance = 6;

/** How much smaller a thing `behind` metres behind the swimmer's plane looks (negative: before it). */
export function shrink(behind: number): number {
  return swimmerDistance / (swimmerDistance + behind);
}

/** Picture row of a height (m over the surface) `behind` metres behind the swimmer's plane. */
export function rowOf(camera: Camera, height: number, behind: number): number {
  return camera.surfaceRow - (camera.eye + (height - camera.eye) * shrink(behind)) / camera.metresPerPixel;
}

/** Picture column of a pool place `behind` metres behind the swimmer's plane. */
export function columnOf(camera: Camera, x: number, behind: number, time: number): number {
  const middle = trailingEdge(camera, time) + (camera.width / 2) * camera.metresPerPixel;
  const across = ((x - middle) * shrink(behind)) / camera.metresPerPixel;
  return camera.width / 2 + (camera.travel === 'right' ? across : -across);
}
