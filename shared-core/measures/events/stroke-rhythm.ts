import type { TimedEvent } from '../body/cycle-frame';
import { eventsOf } from './event-list';
import { gapKinds, gapMarks } from './gaps';
import { phaseKinds } from './phases';
import { strokesOf } from './strokes';

/** What the score draws of one stroke; times in real seconds from the first picture. */
export interface StrokeRhythm {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly breathing: boolean;
  readonly kicks: number;
  readonly phases: readonly {
    readonly name: string;
    readonly from: number;
    readonly to: number;
    readonly percent: number;
  }[];
  readonly gaps: readonly {
    readonly reading: string;
    readonly handEventId: string;
    readonly kickEventId: string;
    readonly milliseconds: number;
    readonly percent: number;
  }[];
}

/** The gaps a coach looks for first; the others are in the readings. */
const drawn = new Set(['kick1-top-to-entry', 'kick2-bottom-to-exit']);

/** Strokes with their phases and the pairs of hand and kick, as the readings pair them. */
export function strokeRhythm(events: readonly TimedEvent[]): {
  readonly strokes: readonly StrokeRhythm[];
  readonly cycleStarts: readonly number[];
} {
  const strokes = strokesOf(events).map((stroke): StrokeRhythm => {
    const length = stroke.next.time - stroke.entry.time;
    return {
      number: stroke.number,
      from: stroke.entry.time,
      to: stroke.next.time,
      breathing: stroke.breath !== null,
      kicks: stroke.kicks.length,
      phases: phaseKinds.flatMap((phase) => {
        const from = stroke[phase.from];
        const to = stroke[phase.to];
        if (!from || !to) return [];
        const percent = (100 * (to.time - from.time)) / length;
        return [{ name: phase.label, from: from.time, to: to.time, percent }];
      }),
      gaps: gapKinds
        .filter((kind) => drawn.has(kind.id))
        .flatMap((kind) => {
          const marks = gapMarks(stroke, kind);
          if (!marks) return [];
          const gap = marks.leg.time - marks.hand.time;
          return [
            {
              reading: kind.id,
              handEventId: marks.hand.event.id,
              kickEventId: marks.leg.event.id,
              milliseconds: 1000 * gap,
              percent: (100 * gap) / length,
            },
          ];
        }),
    };
  });
  const entries = eventsOf(events, 'entry');
  const starts = entries.length >= 2 ? entries : eventsOf(events, 'kick-top');
  return { strokes, cycleStarts: starts.map((each) => each.time) };
}
