import type { EventKind } from '../marks/event-kind';
import type { LandmarkName } from '../marks/landmark';

/** A moment that is marked, or that the traces speak for. */
export interface NeededMoment {
  readonly kind: EventKind;
  readonly frame: number;
}

/** Readings look at the toe this long, real seconds, to either side of a kick's turn, and at the hand about its moments. Our choice. */
const reachSeconds = 0.05;
/**
 * There a point counts so many times as much as elsewhere. Our choice: a kick whose toe is not sure at a turn falls out of the
 * amplitude, and with it what sets it apart from the stroke's other kick.
 */
const turnNeed = 20;
const handNeed = 1.5;

const handKinds: ReadonlySet<EventKind> = new Set(['entry', 'catch', 'shoulder', 'exit']);

/**
 * How much the readings need a landmark on a frame; 1 is usual. Kick frequency and amplitude live from the toe where the
 * kick turns, timing from the hand where it goes in, catches, passes the shoulder and comes out.
 *
 * @param interval real seconds between two frames
 */
export function readingNeeds(
  moments: readonly NeededMoment[],
  interval: number,
): (landmark: LandmarkName, frame: number) => number {
  const reach = Math.max(1, Math.round(reachSeconds / interval));
  const around = (test: (kind: EventKind) => boolean): ReadonlySet<number> =>
    new Set(
      moments
        .filter(({ kind }) => test(kind))
        .flatMap(({ frame }) => Array.from({ length: 2 * reach + 1 }, (_, i) => frame - reach + i)),
    );
  const turns = around((kind) => kind === 'kick-top' || kind === 'kick-bottom');
  const hands = around((kind) => handKinds.has(kind));
  return (landmark, frame) => {
    if (landmark === 'toe') return turns.has(frame) ? turnNeed : 1;
    if (landmark === 'fingertip') return hands.has(frame) ? handNeed : 1;
    return 1;
  };
}
