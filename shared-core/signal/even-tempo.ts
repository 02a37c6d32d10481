/** A movement whose tempo drifts evenly over a stretch of time. */
export interface DriftingTempo {
  readonly from: number;
  readonly to: number;
  /** Length of the last cycle less that of the first, as a share of their mean; between −1 and 1. */
  readonly drift: number;
}

/**
 * A time on a clock by which all cycles of the stretch are as long as their mean: both clocks agree at its two ends. A cycle's
 * length grows straight with its number, so that share s of the cycles takes the share (1 − d/2) s + (d/2) s² of the stretch.
 */
export function evenTime({ from, to, drift }: DriftingTempo, time: number): number {
  const share = (time - from) / (to - from);
  const first = 1 - drift / 2;
  return from + ((to - from) * 2 * share) / (first + Math.sqrt(Math.max(0, first ** 2 + 2 * drift * share)));
}
