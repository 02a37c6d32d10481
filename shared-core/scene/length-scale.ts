import { poolMarkById } from './pool-marks';
import { offPlaneError } from './off-plane';
import { scenePixelScale } from './pool-transform';
import type { RectifiedScene } from './rectified-scene';
import { offPlaneMetres, scaleUncertainty } from './scale-uncertainty';

/** Something about the scale that the coach must know of. */
type ScaleNote =
  /** The known length does not lie in the swimmer's plane, and how far off is not told. */
  | 'scale-off-plane'
  /** The known length runs across the lane, where a side view does not show it in full. */
  | 'scale-across-lane'
  /** Lengths were brought to the swimmer's plane by the distances told. */
  | 'off-plane-corrected';

/** Metres per pixel at the swimmer, and what is not known of it. */
export interface LengthScale {
  readonly metresPerPixel: number;
  /** Relative variances: what every swim of this scene shares, and this swim's own. */
  readonly shared: number;
  readonly own: number;
  readonly notes: readonly ScaleNote[];
  readonly from: 'scale' | 'plane';
}

/**
 * The scale of a scene at the swimmer. Where the camera's distance and how much farther the swimmer is are told, lengths
 * are brought to the swimmer's plane (true / measured = Z_swimmer / Z_scale); where only the distance is told, what the
 * swimmer may be off by counts for that distance.
 *
 * @returns null without a scale or plane, when its ends coincide, or when the swimmer would be behind the camera
 */
export function lengthScale({ scene, plane }: RectifiedScene, scenePointSd: number): LengthScale | null {
  const metresPerPixel = scenePixelScale(scene);
  const { metres, fartherMetres } = scene.camera;
  const offPlaneSd = metres === null ? undefined : offPlaneMetres / metres;
  const known = scaleUncertainty(scene, scenePointSd, offPlaneSd);
  if (metresPerPixel === null || !known) return null;
  const swimmer = metres !== null && fartherMetres !== null ? metres + fartherMetres : null;
  if (swimmer !== null && !(swimmer > 0)) return null;
  // reads too large when nearer, by Z_scale / Z_swimmer − 1
  const error = swimmer !== null && metres !== null ? offPlaneError(metres, swimmer) : 0;
  const notes: ScaleNote[] = [];
  const mark = scene.scale?.preset ? poolMarkById(scene.scale.preset) : null;
  if (error !== 0) notes.push('off-plane-corrected');
  else if (mark?.plane === 'lane-rope' && swimmer === null) notes.push('scale-off-plane');
  if (mark?.plane === 'across') notes.push('scale-across-lane');
  return {
    metresPerPixel: metresPerPixel / (1 + error),
    shared: plane ? plane.cornerVariance + known.length : known.shared,
    own: known.own,
    notes,
    from: plane ? 'plane' : 'scale',
  };
}
