import { eventTime, eventTimeVariance } from '../../../marks/event-time';
import type { EventMark, Swim } from '../../../swim-file/swim-schema';
import { bellySide } from './belly-side';
import { type BodyGeometry, bodyGeometry } from './body-geometry';
import { type KindDoubt, type UsedMarks, usedMarks } from '../../events/used-marks';
import { type CycleFrame, cycleFrame } from './cycle-frame';
import type { TimedEvent } from '../../timed-event';
import type { BodyInput } from './body-input';

/** A swim as the readings see it: sorted, timed, turned level; traces made once and kept. */
export interface BodyContext extends BodyGeometry {
  readonly input: BodyInput;
  /** The part that does not hang on events, to keep things by. */
  readonly geometry: BodyGeometry;
  /** By time, without marks that can't be right beside the others. */
  readonly events: readonly TimedEvent[];
  /** What is doubted of the marks, for readings made from their kinds. */
  readonly markDoubts: readonly KindDoubt[];
  readonly cycles: CycleFrame | null;
  /** −1 when belly and back change places in the picture, as of a swimmer on the back. */
  readonly belly: 1 | -1;
  /** The body bends in the picture's plane, and the picture or card says which way: joints can be read. */
  readonly bendsInPicture: boolean;
}

/** What was made last of one array of postures, with what it was made of. */
interface Kept {
  readonly of: readonly unknown[];
  readonly geometry: BodyGeometry;
  readonly timed: WeakMap<EventMark, TimedEvent>;
  readonly sorted: WeakMap<Swim['events'], UsedMarks>;
  cycles: { readonly of: readonly TimedEvent[]; readonly frame: CycleFrame | null } | null;
}

const kept = new WeakMap<Swim['postures'], Kept>();

/**
 * Sort, time and turn a swim once for all readings. Cost: linear in marks. What is the same as for the swim before (the
 * very same postures, scene, clip and so on, as left by changes that share what they don't touch) is not made again: a
 * moved event costs its own timing only, and cycles stay the same object where they come out the same.
 */
export function bodyContext(input: BodyInput): BodyContext {
  const known = keptFor(input);
  const { geometry } = known;
  const { events, doubts } = sortedEvents(input, known);
  const belly = bellySide(input.swim.card, geometry.columns);
  return {
    ...geometry,
    geometry,
    input,
    events,
    markDoubts: doubts,
    cycles: cyclesOf(events, known),
    belly: belly ?? 1,
    bendsInPicture: belly !== null,
  };
}

/** Whether the context's events are its swim's own, all of them, and not a choice of them. */
export function isWhole(context: BodyContext): boolean {
  const { swim } = context.input;
  return kept.get(swim.postures)?.sorted.get(swim.events)?.events === context.events;
}

function keptFor(input: BodyInput): Kept {
  const { swim, clock, error, swimmer } = input;
  const of = [
    swim.followed,
    swim.seen,
    swim.cameraPath,
    swim.scene,
    swim.clip,
    clock.table,
    clock.slowdown,
    error,
    swimmer,
  ];
  const last = kept.get(swim.postures);
  if (last?.of.every((each, i) => each === of[i])) return last;
  const made: Kept = {
    of,
    geometry: bodyGeometry(input),
    timed: new WeakMap(),
    sorted: new WeakMap(),
    cycles: null,
  };
  kept.set(swim.postures, made);
  return made;
}

function sortedEvents(input: BodyInput, { timed, sorted }: Kept): UsedMarks {
  const { swim, clock, error } = input;
  const known = sorted.get(swim.events);
  if (known) return known;
  const all = swim.events
    .map((event): TimedEvent => {
      const same = timed.get(event) ?? {
        event,
        time: eventTime(clock, event),
        variance: eventTimeVariance(clock, event, error.eventSd[event.kind]),
      };
      timed.set(event, same);
      return same;
    })
    // a mark after the last picture has no time
    .filter(({ event }) => event.frame < clock.table.starts.length)
    .sort((a, b) => a.time - b.time);
  const made = usedMarks(all);
  sorted.set(swim.events, made);
  return made;
}

function cyclesOf(events: readonly TimedEvent[], known: Kept): CycleFrame | null {
  const last = known.cycles;
  if (last?.of === events) return last.frame;
  const made = cycleFrame(events, known.geometry.trace('toe'));
  const frame = last && isSame(last.frame, made) ? last.frame : made;
  known.cycles = { of: events, frame };
  return frame;
}

/** Whether two cycles are alike in all they hold. */
const isSame = (a: CycleFrame | null, b: CycleFrame | null): boolean =>
  JSON.stringify(a) === JSON.stringify(b);
