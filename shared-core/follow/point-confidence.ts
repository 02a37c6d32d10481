import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import type { Sighting } from './blend-sightings';
import { warnedConfidence } from './expected-error';
import { armLandmarks } from './limb';

/** All that following knows of how far a point may be off. Places in pixels, seconds real. */
export interface PointEvidence {
  readonly landmark: LandmarkName;
  readonly forward: Sighting;
  readonly backward: Sighting;
  /** What the two ways said together, and where the point was laid in the end. */
  readonly blended: Point;
  readonly settled: Sighting;
  /** Between the two marks that hold the point. */
  readonly secondsBetweenMarks: number;
  /** How long the limbs at the landmark look against the longest they were marked, the least of them: 1 in the picture's plane. */
  readonly shownShare: number;
  readonly bodyLength: number;
}

/**
 * Natural logarithm of the variance (one axis, in body lengths squared): so much for each e-fold of how far the two ways were
 * apart, how far laying all together moved what they had said, how weakly the pictures hold the point, how far apart
 * its marks are, and how long its limbs look (what slips along a limb that points at the camera slips little in the
 * picture); and so much for a limb that turns out of the picture's plane and goes over the water. Fitted as the variance
 * of a normal error to 45,801 points of nine followed butterfly clips and one of kicking with two or three drawn coaches each; the
 * held-out clip was not among them.
 */
const weights = {
  apart: 0.176,
  moved: 0.296,
  weak: 0.786,
  between: 0.327,
  shown: 0.987,
  arm: 0.778,
} as const;
const usual = -3.02;
/** Smaller shares of the body length, and shorter times, tell nothing more; nor do limbs that look longer than they can. */
const least = { apart: 0.001, moved: 0.0005, weak: 0.0003, between: 0.05, shown: 0.1 } as const;
const mostShown = 1.1;

/** How far a point is thought to be off: the logarithm of its variance, one axis, in body lengths squared. */
export function pointDoubt(evidence: PointEvidence): number {
  const { landmark, forward, backward, blended, settled, bodyLength } = evidence;
  const share = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y) / bodyLength;
  const folds = (value: number, smallest: number): number => Math.log(Math.max(value, smallest));
  return (
    usual +
    weights.apart * folds(share(forward.at, backward.at), least.apart) +
    weights.moved * folds(share(blended, settled.at), least.moved) +
    weights.weak * folds(Math.sqrt(settled.variance) / bodyLength, least.weak) +
    weights.between * folds(evidence.secondsBetweenMarks, least.between) +
    weights.shown * folds(Math.min(evidence.shownShare, mostShown), least.shown) +
    (armLandmarks.has(landmark) ? weights.arm : 0)
  );
}

/** A point that was lost was lost for longer than one frame: doubt is shared with those so near, real seconds. Our choice. */
const alikeSeconds = 0.05;

/**
 * Confidence of each point of one run from their doubts: the probability, made to warn early, that it lies within 2 % of
 * the body length of the truth. A point among doubtful ones is as doubtful as they are on average; among sure ones it
 * keeps its own doubt. `times` are the points' real seconds, ascending.
 */
export function runConfidences(doubts: readonly number[], times: readonly number[]): readonly number[] {
  return doubts.map((own, i) => {
    const time = times[i] as number;
    let sum = 0;
    let count = 0;
    doubts.forEach((doubt, k) => {
      if (Math.abs((times[k] as number) - time) > alikeSeconds + 1e-6) return;
      sum += doubt;
      count += 1;
    });
    return warnedConfidence(Math.exp(Math.max(own, sum / count) / 2));
  });
}
