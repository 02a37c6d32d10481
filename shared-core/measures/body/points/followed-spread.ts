/**
 * Real seconds after which the error of a followed point has faded to 1/e of itself: a point that drifted off one mark
 * stays off for the next pictures, so neighbouring ones do not count as many. Our default.
 */
const errorSeconds = 0.1;

/** Kicks a second at which waves are told apart from that drift. Our default. */
const usualKickHz = 2;

/** By how much the variance of one followed point grows where many of one trace are read together. */
export interface FollowedSpread {
  /** For a fitted wave: power of the drift at a kick's usual frequency over that of errors without memory. */
  readonly wave: number;
  /** For a mean or a slope: the same at rest. */
  readonly slow: number;
  /** For what lifts the extremes of a wave, its quicker parts: the same at twice the kick's frequency. */
  readonly quick: number;
}

/**
 * Spread of followed points taken at a rate: errors that fade by e in a tenth of a second have, at angular frequency ω,
 * (1 − ρ²) / (1 − 2ρ cos ωΔ + ρ²) of the power of errors without memory, ρ = exp(−Δ / 0.1 s). Never below 1.
 *
 * @param interval real seconds from one followed point to the next
 * @see the spectrum of a first-order autoregression (any text on time series)
 */
export function followedSpread(interval: number): FollowedSpread {
  const rho = Math.exp(-Math.max(0, interval) / errorSeconds);
  const at = (omega: number): number =>
    Math.max(1, (1 - rho * rho) / Math.max(1e-9, 1 - 2 * rho * Math.cos(omega * interval) + rho * rho));
  const kick = 2 * Math.PI * usualKickHz;
  return { wave: at(kick), slow: at(0), quick: at(2 * kick) };
}
