/**
 * Relative error of a length read in a plane other than the one the scale was laid in: Z_cal / Z_obj − 1.
 * Positive: the swimmer is nearer and reads too large.
 *
 * @param scaleDistance camera to the plane of the scale, metres, above 0
 * @param swimmerDistance camera to the swimmer, metres, above 0
 * @see the pinhole camera: size in the picture goes with one over distance.
 */
export function offPlaneError(scaleDistance: number, swimmerDistance: number): number {
  if (!(scaleDistance > 0) || !(swimmerDistance > 0)) throw new RangeError('distances must be above 0 m');
  return scaleDistance / swimmerDistance - 1;
}
