import type { Point } from '../units/brand';

/** Where one way of following saw a landmark on a frame. */
export interface Sighting {
  readonly at: Point;
  /** px², one axis: how far the picture itself pins the point down. */
  readonly variance: number;
  /** Grey levels by which the limbs at this landmark differ from their marked looks. */
  readonly residual: number;
  /** Distance, px, by which plain flow to this frame misses its start when it is followed back; null: lost. */
  readonly backError: number | null;
}

export interface BlendedPoint {
  readonly at: Point;
  /** px², one axis. */
  readonly variance: number;
}

/** Looks that differ by this many grey levels more make a sighting count a third as much. Our default. */
const residualScale = 7;

/**
 * One place from following forward and backward. `share` is how far the frame lies between the two marks, 0 at the
 * first: the way that came less far counts more, and the one whose limbs look more as marked. Where the two disagree
 * the variance says so: a point lost by either is as unsure as they are apart.
 */
export function blendSightings(
  forward: Sighting,
  backward: Sighting,
  share: number,
  bodyLength: number,
): BlendedPoint {
  const least = Math.min(forward.residual, backward.residual);
  const looks = (sighting: Sighting): number => Math.exp(-((sighting.residual - least) / residualScale));
  const f = (1 - share) * looks(forward);
  const b = share * looks(backward);
  const weight = f + b > 0 ? f / (f + b) : 1 - share;
  const at = {
    x: weight * forward.at.x + (1 - weight) * backward.at.x,
    y: weight * forward.at.y + (1 - weight) * backward.at.y,
  };
  const apart = (forward.at.x - backward.at.x) ** 2 + (forward.at.y - backward.at.y) ** 2;
  const seen = weight * forward.variance + (1 - weight) * backward.variance;
  const strange = (Math.max(0, weight * forward.residual + (1 - weight) * backward.residual - 12) / 40) ** 2;
  const variance = (0.002 * bodyLength) ** 2 + seen + apart / 4 + strange * (0.02 * bodyLength) ** 2;
  return { at, variance };
}
