import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import type { Sighting } from './blend-sightings';
import { warnedConfidence } from './expected-error';
import { sureEnough } from './follow-confidence';
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

/** What is known of one point of a run. */
export interface PointDoubt {
  /** From `pointDoubt`. */
  readonly spread: number;
  /** How far the limbs at the point are from their marked looks; a `Sighting`'s residual. */
  readonly strange: number;
}

/**
 * Logarithm of the odds that a point is off by over 2 % of the body length: so much for its expected spread, and so much for limbs
 * that look unlike themselves. Noise and murk make every point's spread larger, yet lose only those whose limbs look
 * strange; by spread alone, right points of such film were called unsure. Logistic regression on 9,504 points of one
 * butterfly and one kicking clip, each as drawn and through three looks of water (tests/bench/follow/follow-filmed.ts);
 * two other clips prove it.
 */
const lostOdds = { usual: 10.69, spread: 1.711, strange: 5.501 } as const;

/**
 * Confidence of each point of one run: the probability that it lies within 2 % of the body length of the truth. Where it is
 * probably not lost, confidence stays above what is sure and tells its spread; else it is the probability itself. A point
 * among doubtful ones is as doubtful as they are on average; among sure ones it keeps its own doubt. `times` are the
 * points' real seconds, ascending.
 */
export function runConfidences(doubts: readonly PointDoubt[], times: readonly number[]): readonly number[] {
  return doubts.map((own, i) => {
    const time = times[i] as number;
    let [spreads, strange, count] = [0, 0, 0];
    doubts.forEach((doubt, k) => {
      if (Math.abs((times[k] as number) - time) > alikeSeconds + 1e-6) return;
      spreads += doubt.spread;
      strange += doubt.strange;
      count += 1;
    });
    const spread = Math.max(own.spread, spreads / count);
    const odds = lostOdds.usual + lostOdds.spread * spread + (lostOdds.strange * strange) / count;
    const held = 1 / (1 + Math.exp(odds));
    return held >= sureEnough ? Math.max(sureEnough, warnedConfidence(Math.exp(spread / 2))) : held;
  });
}
