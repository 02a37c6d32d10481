import { difference, quotient, scaled, type Tracked, trackedVariance } from '../../uncertainty/tracked';
import type { BodyContext } from '../body/context/body-context';
import type { MissingReason } from '../reading';
import { measuredMarks } from './event-list';
import { markVariances, timeOf } from './tracked-reading';

/**
 * Standard deviation of a pool mark's own distance, metres: 1 cm. Our default, no source; with it a speed never claims
 * that the pool was measured without error.
 */
const markSd = 0.01;

export interface MarkedSpeed {
  /** Metres a second, with the marks' times it depends on. */
  readonly speed: Tracked;
  /** Relative variance that the pool marks' own places bring. */
  readonly placeVariance: number;
  readonly eventIds: readonly string[];
  /** Real seconds of the first and last mark. */
  readonly from: number;
  readonly to: number;
}

export type MarkedSpeedResult =
  | { readonly ok: true; readonly found: MarkedSpeed }
  | { readonly ok: false; readonly reason: MissingReason };

/**
 * Mean speed between the first and the last distance mark that carry metres; needs no scale. Marks before `notBefore`
 * (real seconds) don't count: clean swimming leaves out the underwater part.
 */
export function speedBetweenMarks(
  context: BodyContext,
  notBefore = Number.NEGATIVE_INFINITY,
): MarkedSpeedResult {
  const marks = measuredMarks(context.events).filter((each) => each.time >= notBefore);
  const first = marks[0];
  const last = marks.at(-1);
  if (!first || !last || marks.length < 2)
    return {
      ok: false,
      reason: { code: 'needs-events', kind: 'distance-mark', have: marks.length, need: 2 },
    };
  const metres = Math.abs(last.metres - first.metres);
  if (metres === 0) return { ok: false, reason: { code: 'degenerate', what: 'zero-length' } };
  const metresOnly: Tracked = { value: metres, slopes: new Map() };
  const speed = quotient(metresOnly, difference(timeOf(last), timeOf(first)));
  if (!speed) return { ok: false, reason: { code: 'degenerate', what: 'equal-times' } };
  return {
    ok: true,
    found: {
      speed,
      placeVariance: (2 * markSd ** 2) / metres ** 2,
      eventIds: [first.event.id, last.event.id],
      from: first.time,
      to: last.time,
    },
  };
}

/** Variance of `factor · speed`, (m/s · factor)². */
export function markedSpeedVariance(
  context: BodyContext,
  { speed, placeVariance }: MarkedSpeed,
  factor = 1,
): number {
  const own = trackedVariance(scaled(factor, speed), markVariances(context));
  return own + placeVariance * (factor * speed.value) ** 2;
}
