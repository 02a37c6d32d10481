/**
 * Readings that are shown for one swim and never compared, ranked, trended or aimed at: how long and how far a swimmer
 * stays under water, and what only grows with it. Chasing them is how swimmers black out.
 */
const underwaterAmounts = ['underwater-time', 'underwater-distance', 'underwater-kicks'];

/** True for a reading that no trial, trend or target may use. */
export function neverCompared(readingId: string): boolean {
  return underwaterAmounts.some((each) => readingId === each || readingId.startsWith(`${each}-`));
}
