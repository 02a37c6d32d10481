import type { TimedEvent } from '../timed-event';

export interface CycleStarts {
  /** What one cycle is: from hand entry to hand entry, or from kick top to kick top. */
  readonly of: 'stroke' | 'kick';
  /** Real seconds, strictly ascending. */
  readonly times: readonly number[];
}

/** Where cycles begin: at hand entries where at least two are marked, else at kick tops. Events in order of time. */
export function cycleStarts(events: readonly TimedEvent[]): CycleStarts {
  const starts = (kind: 'entry' | 'kick-top'): readonly number[] =>
    events
      .filter((each) => each.event.kind === kind)
      .map((each) => each.time)
      .sort((p, q) => p - q)
      .filter((time, index, all) => index === 0 || time > (all[index - 1] ?? time));
  const entries = starts('entry');
  return entries.length > 1 ? { of: 'stroke', times: entries } : { of: 'kick', times: starts('kick-top') };
}
