import type { Point } from '../units/brand';

/** Where one way of following saw a landmark on a frame. */
export interface Sighting {
  readonly at: Point;
  /** px², one axis: how far the picture itself pins the point down. */
  readonly variance: number;
  /** How far the limbs at this landmark are from their marked looks, share of the looks' own contrast. */
  readonly residual: number;
}

/** Looks that differ by this much more make a sighting count a third as much. Set on the sample clips. */
const residualScale = 0.06;
/** A coach's mark and a limb's look leave this share of the body length unsaid. */
const leastShare = 0.0027;
/** How much of the distance between the two ways, squared, counts as variance where it is seen once more from both. */
const apartShare = 0.25;
/** Looks farther off than this begin to be strange; each unit more costs so much of the body length. */
const usualResidual = 0.35;
const strangeShare = 0.0175;

/**
 * One place from following forward and backward. `share` is how far the frame lies between the two marks, 0 at the
 * first: the way that came less far counts more, and the one whose limbs look more as marked.
 */
export function blendSightings(forward: Sighting, backward: Sighting, share: number): Point {
  const least = Math.min(forward.residual, backward.residual);
  const looks = (sighting: Sighting): number => Math.exp(-((sighting.residual - least) / residualScale));
  const f = (1 - share) * looks(forward);
  const b = share * looks(backward);
  const weight = f + b > 0 ? f / (f + b) : 1 - share;
  return {
    x: weight * forward.at.x + (1 - weight) * backward.at.x,
    y: weight * forward.at.y + (1 - weight) * backward.at.y,
  };
}

/**
 * Variance (px², one axis) of where a landmark was laid in the end: what the picture pins down, how strange its limbs
 * look there, and how far the two ways had been apart. Where they disagree one of them was lost, and what was laid
 * from both may be too.
 */
export function varianceOfSightings(
  forward: Sighting,
  backward: Sighting,
  settled: Sighting,
  bodyLength: number,
): number {
  const apart = (forward.at.x - backward.at.x) ** 2 + (forward.at.y - backward.at.y) ** 2;
  const strange = Math.max(0, settled.residual - usualResidual) ** 2;
  return (
    (leastShare * bodyLength) ** 2 +
    settled.variance +
    apartShare * apart +
    strange * (strangeShare * bodyLength) ** 2
  );
}
