/** Which samples of a trace the machine followed, and how much each counts. */
export interface FollowedSamples {
  /** Sample by sample, whether it was followed. */
  readonly is: readonly boolean[];
  /** Standard deviation of one followed coordinate, pool units. */
  readonly sd: number;
  /** Weight of each sample against a marked one: in fitted waves, and in means and slopes. */
  readonly waveWeights: readonly number[];
  readonly slowWeights: readonly number[];
}

/** One landmark over the postures that hold it, in pool units. */
export interface LandmarkTrace {
  readonly frames: readonly number[];
  readonly times: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Standard deviation of one marked coordinate, pool units. */
  readonly sd: number;
  /** Null where the coach marked every sample. */
  readonly followed: FollowedSamples | null;
}

/** Variance of one sample's coordinate read by itself, pool units². */
export function sampleVariance(trace: LandmarkTrace, index: number): number {
  return (trace.followed?.is[index] ? trace.followed.sd : trace.sd) ** 2;
}
