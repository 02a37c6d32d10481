import type { FollowedRun } from '../swim-file/swim-schema';
import { expectedErrorShare } from './expected-error';
import { confidenceOfSd, sdOfConfidence } from './follow-confidence';

/** What a coach's answer told of doubt: how sure a point was called, and how far it was off, share of the body length. */
export interface DoubtAnswer {
  readonly confidence: number;
  readonly offShare: number;
}

/** What is thought before any answer counts as so many answers. Our choice: a few answers alone may be luck. */
const priorAnswers = 6;
/** No answer is better than a careful mark, share of the body length. Our default. */
const leastShare = 0.004;
/** Doubt is never taken to be less than this share of what was stated. Our choice. */
const leastScale = 0.4;

/**
 * How much smaller the errors of followed points are on this film than stated: 1 until answers say otherwise, at least 0.4. Doubt
 * was fitted on drawn film; water, light and noise can make pictures look strange without moving a point, and then right
 * points are asked for. Each answer is one draw of how far off a point was against what was expected (their mean square
 * ratio, with the prior's weight). Never over 1: answers make nothing more doubtful, as what is off is asked for anyway.
 */
export function doubtScale(answers: readonly DoubtAnswer[]): number {
  const sum = answers.reduce((total, { confidence, offShare }) => {
    const expected = expectedErrorShare(confidence);
    return total + Math.max(offShare, leastShare) ** 2 / (2 * expected ** 2);
  }, priorAnswers);
  return Math.max(leastScale, Math.min(1, Math.sqrt(sum / (priorAnswers + answers.length))));
}

/** Followed points as sure as they are on this film. */
export function withDoubtScaled(followed: readonly FollowedRun[], scale: number): readonly FollowedRun[] {
  if (scale >= 1) return followed;
  return followed.map((run) => ({
    ...run,
    points: run.points.map(([x, y, confidence]): [number, number, number] => [
      x,
      y,
      confidenceOfSd(scale * sdOfConfidence(confidence, 1), 1),
    ]),
  }));
}
