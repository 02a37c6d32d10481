import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';

/** Where one way of following saw a landmark on a frame. */
export interface Sighting {
  readonly at: Point;
  /** px², one axis: how far the picture itself pins the point down. */
  readonly variance: number;
  /** How far the limbs at this landmark are from their marked looks, share of the looks' own contrast. */
  readonly residual: number;
}

/** What was seen of the body on a frame. */
export type Sightings = ReadonlyMap<LandmarkName, Sighting>;

/** Looks that differ by this much more make a sighting count a third as much. Set on the sample clips. */
const residualScale = 0.06;
/** A coach's mark and a limb's look leave this share of the body length unsaid. Fitted, like the next four, on followed sample clips. */
const leastShare = 0.0025;
/** How much of the distance between the two ways, squared, counts as variance. */
const apartShare = 0.14;
/** How much of the distance, squared, by which laying all together moved what the two ways had put. */
const movedShare = 0.25;
/** Where the picture pins a point down no better than this share of the body length, it often pins down something else. */
const weakShare = 0.00067;
/** Looks farther off than this begin to be strange; each unit more costs so much of the body length. */
const usualResidual = 0.35;
const strangeShare = 0.0065;

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
 * Variance (px², one axis) of where a landmark was laid in the end: how far the two ways had been apart, how far it was
 * moved from where they put it, how weakly the pictures hold it, and how strange its limbs look there. Where the two ways
 * disagree one of them was lost, and what was laid from both may be too.
 */
export function varianceOfSightings(
  forward: Sighting,
  backward: Sighting,
  settled: Sighting,
  bodyLength: number,
  blended: Point = settled.at,
): number {
  const square = (a: Point, b: Point): number => (a.x - b.x) ** 2 + (a.y - b.y) ** 2;
  const strange = Math.max(0, settled.residual - usualResidual) ** 2;
  return (
    (leastShare * bodyLength) ** 2 +
    apartShare * square(forward.at, backward.at) +
    movedShare * square(blended, settled.at) +
    (settled.variance / (weakShare * bodyLength)) ** 2 +
    strange * (strangeShare * bodyLength) ** 2
  );
}
