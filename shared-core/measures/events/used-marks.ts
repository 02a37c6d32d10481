import type { EventKind } from '../../marks/event-kind';
import type { TimedEvent } from '../timed-event';
import type { DoubtCode } from '../doubt';
import { countCycles } from './count-cycles';
import { eventsOf } from './event-list';
import { outOfStep } from './half-kick-steps';
import { strokePlaces } from './stroke-places';
import { usualKick } from './usual-kick';

/** A doubt that falls on every reading made from marks of these kinds. */
export interface KindDoubt {
  readonly code: DoubtCode;
  readonly kinds: readonly EventKind[];
  readonly frames: readonly number[];
  /** The moment is known all the same but for so little that only what hangs on single moments is doubtful. */
  readonly isSlight: boolean;
}

export interface UsedMarks {
  /** Events without those that can't be right beside the others; by time. */
  readonly events: readonly TimedEvent[];
  readonly doubts: readonly KindDoubt[];
}

const handKinds = ['entry', 'catch', 'shoulder', 'navel', 'exit'] as const satisfies readonly EventKind[];
const footKinds = ['kick-top', 'kick-bottom'] as const satisfies readonly EventKind[];

/**
 * Two marks of one kind nearer than this share of the usual time between them are one moment marked twice: kicks of one
 * stroke are at least a quarter of it apart. Our default.
 */
const twiceWithin = 0.2;

/** Two marks of one moment no farther apart than this share of that time leave rhythms and waves as they are. Our default. */
const slightWithin = 0.05;

/** The marks readings are made from: one of each moment, and no top where the feet are low. */
export function usedMarks(all: readonly TimedEvent[]): UsedMarks {
  const doubts: KindDoubt[] = [];
  const hands = countCycles(handKinds.map((kind) => eventsOf(all, kind)))?.typical ?? null;
  const feet = usualKick(eventsOf(all, 'kick-top'), eventsOf(all, 'kick-bottom'));
  const gone = new Set<TimedEvent>();
  for (const kind of [...handKinds, ...footKinds]) {
    const isFoot = kind === 'kick-top' || kind === 'kick-bottom';
    const usual = isFoot ? Math.max(feet ?? 0, hands ?? 0) : hands;
    const row = eventsOf(all, kind);
    const twice =
      usual === null
        ? []
        : row.filter((mark, i) => mark.time - (row[i - 1]?.time ?? -Infinity) < twiceWithin * usual);
    if (twice.length === 0) continue;
    for (const mark of twice) gone.add(mark);
    const isSlight = twice.every((mark) => {
      const before = row[row.indexOf(mark) - 1];
      return before !== undefined && mark.time - before.time < slightWithin * (usual ?? 0);
    });
    const frames = twice.map(({ event }) => event.frame);
    doubts.push({ code: 'marked-twice', kinds: [kind], frames, isSlight });
  }
  let events = gone.size === 0 ? all : all.filter((each) => !gone.has(each));
  const exchanged = exchangedKicks(events, feet);
  if (exchanged.length > 0) {
    const wrong = new Set(exchanged);
    events = events.filter((each) => !wrong.has(each));
    doubts.push({
      code: 'tops-bottoms-may-be-exchanged',
      kinds: footKinds,
      frames: exchanged.map(({ event }) => event.frame),
      isSlight: false,
    });
  }
  return { events, doubts };
}

function exchangedKicks(events: readonly TimedEvent[], feet: number | null): readonly TimedEvent[] {
  const strokes = strokePlaces(events);
  if (strokes?.feet) return strokes.feet.exchanged;
  if (strokes || feet === null) return [];
  const marks = events.filter(({ event }) => event.kind === 'kick-top' || event.kind === 'kick-bottom');
  return outOfStep(marks, feet);
}
