import type { EventKind } from '#core/marks/event-kind';
import type { TrueStroke } from '../truth-schema';
import type { TrueEvent } from './true-events';

const round = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Whole strokes of a butterfly swim with their gaps and phases, straight from the true instants. */
export function trueStrokes(events: readonly TrueEvent[]): TrueStroke[] {
  const timesOf = (kind: EventKind): number[] =>
    events.filter((each) => each.kind === kind).map((each) => each.time);
  const entries = timesOf('entry');
  return entries.slice(0, -1).flatMap((entry, i) => {
    const nextEntry = entries[i + 1] ?? entry;
    const long = nextEntry - entry;
    const within = (kind: EventKind, early: number): number[] =>
      timesOf(kind).filter((time) => time >= entry - early && time < nextEntry - early);
    // kick one may turn just before the hands go in
    const [top1, top2] = within('kick-top', 0.2 * long);
    const [bottom1, bottom2] = within('kick-bottom', 0);
    const [grip] = within('catch', 0);
    const [shoulder] = within('shoulder', 0);
    const [exit] = within('exit', 0);
    if (top1 === undefined || top2 === undefined || bottom1 === undefined || bottom2 === undefined) return [];
    if (grip === undefined || shoulder === undefined || exit === undefined) return [];
    const gap = (leg: number, arm: number): number => round(1000 * (leg - arm), 2);
    const phase = (from: number, to: number): number => round((100 * (to - from)) / long, 3);
    return [
      {
        entry: round(entry, 6),
        nextEntry: round(nextEntry, 6),
        breathing: within('breath', 0).length > 0,
        gapsMs: [gap(top1, entry), gap(bottom1, grip), gap(top2, shoulder), gap(bottom2, exit)],
        phasesPercent: [
          phase(entry, grip),
          phase(grip, shoulder),
          phase(shoulder, exit),
          phase(exit, nextEntry),
        ],
      },
    ];
  });
}
