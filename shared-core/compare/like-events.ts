import type { EventMark } from '../swim-file/swim-schema';

/** A marked event at its place on the pair's common axis. */
export interface PlacedEvent {
  readonly event: EventMark;
  readonly place: number;
}

/** The same moment in both swims. `later`: second minus first, in units of the axis; positive: the second is later. */
export interface LikeEvents {
  readonly first: PlacedEvent;
  readonly second: PlacedEvent;
  readonly later: number;
}

/** Whether two marks can be the same moment: of one kind, hand, side of breath and metres. */
const alike = (a: EventMark, b: EventMark): boolean =>
  a.kind === b.kind && a.hand === b.hand && a.breathTo === b.breathTo && a.metres === b.metres;

/**
 * Events that answer each other: alike, each the other's nearest, and no farther apart than `farthest`. An event without
 * an answer is left out, so a mark missing in one swim never shifts the others.
 */
export function likeEvents(
  first: readonly PlacedEvent[],
  second: readonly PlacedEvent[],
  farthest: number,
): readonly LikeEvents[] {
  const nearest = (of: PlacedEvent, among: readonly PlacedEvent[]): PlacedEvent | null => {
    let best: PlacedEvent | null = null;
    for (const each of among) {
      if (!alike(each.event, of.event)) continue;
      if (!best || Math.abs(each.place - of.place) < Math.abs(best.place - of.place)) best = each;
    }
    return best;
  };
  return first.flatMap((a) => {
    const b = nearest(a, second);
    if (!b || nearest(b, first) !== a || Math.abs(b.place - a.place) > farthest) return [];
    return [{ first: a, second: b, later: b.place - a.place }];
  });
}
