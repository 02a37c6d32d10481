/** Off by more than this share of the body length, a followed point is no use for a reading (our choice). */
export const usefulShare = 0.02;
/** Below this confidence a point is asked of the coach and no reading uses it. Our default, set on the sample clips. */
export const sureEnough = 0.95;

/**
 * Confidence of a followed point: the probability that it lies within 2 % of the body length of the truth, when each
 * axis errs normally with standard deviation `sd` (then the distance is Rayleigh distributed). 1 for sd 0.
 */
export function confidenceOfSd(sd: number, bodyLength: number): number {
  const reach = usefulShare * bodyLength;
  return sd > 0 ? 1 - Math.exp(-(reach * reach) / (2 * sd * sd)) : 1;
}

/** The standard deviation of one axis that a stored confidence stands for; inverse of `confidenceOfSd`. */
export function sdOfConfidence(confidence: number, bodyLength: number): number {
  if (confidence >= 1) return 0;
  if (confidence <= 0) return Infinity;
  return (usefulShare * bodyLength) / Math.sqrt(-2 * Math.log(1 - confidence));
}
