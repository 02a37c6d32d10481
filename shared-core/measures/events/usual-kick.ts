import type { TimedEvent } from '../timed-event';
import { countCycles } from './count-cycles';

/** Shares of a kick that a down-kick takes; outside of them a kick is missing between, or counted twice. Our default. */
export const downShare = { low: 0.3, high: 0.7 } as const;

/**
 * Usual length of a kick, seconds, of kicks outside strokes. Exchanged tops and bottoms bring gaps of half kicks, which
 * whole kicks are then counted in: a down-kick as long as the whole kick tells that. Null without two marks of one kind.
 */
export function usualKick(tops: readonly TimedEvent[], bottoms: readonly TimedEvent[]): number | null {
  const counted = countCycles([tops, bottoms]);
  if (!counted) return null;
  const share = downSeconds(tops, bottoms) / counted.typical;
  return share > downShare.high && share / 2 >= downShare.low && share / 2 <= downShare.high
    ? 2 * counted.typical
    : counted.typical;
}

/** Seconds from a top to the next bottom, in the middle of all; not a number where none comes after a top. */
export function downSeconds(tops: readonly TimedEvent[], bottoms: readonly TimedEvent[]): number {
  const all = tops
    .flatMap(({ time }) => {
      const next = bottoms.find((each) => each.time > time);
      return next ? [next.time - time] : [];
    })
    .sort((a, b) => a - b);
  return all[all.length >> 1] ?? Number.NaN;
}
