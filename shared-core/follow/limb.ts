import type { LandmarkName } from '../marks/landmark';

/** What turns out of the picture's plane and goes over the water. */
export const armLandmarks: ReadonlySet<LandmarkName> = new Set(['elbow', 'wrist', 'fingertip']);

/** A part of the body that looks much the same from picture to picture, held by a landmark at each end. */
export interface Limb {
  readonly from: LandmarkName;
  readonly to: LandmarkName;
  /** Half of the strip looked at, and how far it goes on beyond each end; shares of the body length. */
  readonly halfWidth: number;
  readonly before: number;
  readonly beyond: number;
}

/** Strips a little wider than a grown swimmer's limbs, so that both edges against the water are seen. Our own figures. */
export const limbs: readonly Limb[] = [
  { from: 'wrist', to: 'fingertip', halfWidth: 0.022, before: 0, beyond: 0.02 },
  { from: 'elbow', to: 'wrist', halfWidth: 0.024, before: 0, beyond: 0 },
  { from: 'shoulder', to: 'elbow', halfWidth: 0.03, before: 0, beyond: 0 },
  { from: 'shoulder', to: 'ear', halfWidth: 0.05, before: 0, beyond: 0.05 },
  { from: 'shoulder', to: 'hip', halfWidth: 0.06, before: 0, beyond: 0 },
  { from: 'hip', to: 'knee', halfWidth: 0.048, before: 0, beyond: 0 },
  { from: 'knee', to: 'ankle', halfWidth: 0.034, before: 0, beyond: 0 },
  { from: 'ankle', to: 'toe', halfWidth: 0.026, before: 0.01, beyond: 0.02 },
];
