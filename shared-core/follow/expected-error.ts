import { sdOfConfidence, usefulShare } from './follow-confidence';

/**
 * Confidence is made to warn early: on the clips it was fitted on, points err by about this share of what it says, and
 * lost ones by hardly more than `lostShare` of the body length, as marks on both sides hold them (`pointConfidence`).
 */
const warnedShare = 0.75;
const lostShare = 0.05;

/** How far a followed point is expected to be off: standard deviation of one axis, share of the body length. */
export function expectedErrorShare(confidence: number): number {
  const warned = warnedShare * sdOfConfidence(confidence, 1);
  if (!Number.isFinite(warned)) return lostShare;
  return warned / Math.sqrt(1 + (warned / lostShare) ** 2);
}

/** The square of that in units of what is still useful for a reading: 0 to 6.25. */
export function expectedSquare(confidence: number): number {
  return (expectedErrorShare(confidence) / usefulShare) ** 2;
}
