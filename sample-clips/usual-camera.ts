import type { Camera } from './drawing/camera';

/** Half over, half under the surface; and wholly under it. */
export const split: Camera = {
  width: 1280,
  height: 720,
  metresPerPixel: 0.0061,
  surfaceRow: 176,
  travel: 'right',
  eye: 0,
  carried: null,
};
export const under: Camera = { ...split, metresPerPixel: 0.0048, surfaceRow: 118, eye: -0.62 };
