import { confidenceOfSd, sdOfConfidence, usefulShare } from './follow-confidence';

/**
 * Confidence is made to warn early: a point is called as doubtful as if it were off by so many times what is expected. So
 * 96.6 % of the points off by more than 2 % of the body length were called unsure, and 22 % of all, each clip left out in
 * turn of those that doubt was fitted on (`pointDoubt`).
 */
const warnTimes = 1.5;
/** Points that were lost altogether are off by hardly more than this, as marks on both sides hold them. */
const lostShare = 0.05;

/** The confidence that is kept of a point expected to be off by `sd`: standard deviation of one axis, share of the body length. */
export const warnedConfidence = (sd: number): number => confidenceOfSd(warnTimes * sd, 1);

/** How far a followed point is expected to be off: standard deviation of one axis, share of the body length. */
export function expectedErrorShare(confidence: number): number {
  const sd = sdOfConfidence(confidence, 1) / warnTimes;
  if (!Number.isFinite(sd)) return lostShare;
  return sd / Math.sqrt(1 + (sd / lostShare) ** 2);
}

/** The square of that in units of what is still useful for a reading: 0 to 6.25. */
export function expectedSquare(confidence: number): number {
  return (expectedErrorShare(confidence) / usefulShare) ** 2;
}
