import { eventTime, eventTimeVariance } from '../../marks/event-time';
import type { EventMark, Swim } from '../../swim-file/swim-schema';
import type { Swimmer } from '../../swim-file/squad-schema';
import type { ClipClock } from '../../timeline/clip-clock';
import type { MarkingError } from '../../uncertainty/marking-error';
import { bellySide } from './belly-side';
import { type BodyGeometry, bodyGeometry } from './body-geometry';
import { type CycleFrame, cycleEvents, cycleFrame, type TimedEvent } from './cycle-frame';

/** What the landmark readings need to know of a swim. */
export interface BodyInput {
  readonly swim: Swim;
  readonly clock: ClipClock;
  readonly error: MarkingError;
  /** The swimmer's record; null when unknown. */
  readonly swimmer: Pick<Swimmer, 'streamlineMetres' | 'bodyTable' | 'birthYear'> | null;
}

/** A swim as the readings see it: sorted, timed, turned level; traces made once and kept. */
export interface BodyContext extends BodyGeometry {
  readonly input: BodyInput;
  /** The part that does not hang on events, to keep things by. */
  readonly geometry: BodyGeometry;
  /** By time. */
  readonly events: readonly TimedEvent[];
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
  readonly sorted: WeakMap<Swim['events'], readonly TimedEvent[]>;
  cycles: { readonly of: readonly TimedEvent[]; readonly frame: CycleFrame | null } | null;
}

const kept = new WeakMap<Swim['postures'], Kept>();

/**
 * Sort, time and turn a swim once for all readings. Cost: linear in marks. What is the same as for the swim before (the
 * very same postures, scene, clip and so on, as left by changes that share what they don't touch) is not made again: a
 * moved event costs its own timing only, and cycles are made anew only where one of their own events moved.
 */
export function bodyContext(input: BodyInput): BodyContext {
  const known = keptFor(input);
  const { geometry } = known;
  const events = sortedEvents(input, known);
  const belly = bellySide(input.swim.card, geometry.columns);
  return {
    ...geometry,
    geometry,
    input,
    events,
    cycles: cyclesOf(events, known),
    belly: belly ?? 1,
    bendsInPicture: belly !== null,
  };
}

/** Whether the context's events are its swim's own, all of them, and not a choice of them. */
export function isWhole(context: BodyContext): boolean {
  const { swim } = context.input;
  return kept.get(swim.postures)?.sorted.get(swim.events) === context.events;
}

function keptFor(input: BodyInput): Kept {
  const { swim, clock, error, swimmer } = input;
  const of = [
    swim.followed,
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

function sortedEvents(input: BodyInput, { timed, sorted }: Kept): readonly TimedEvent[] {
  const { swim, clock, error } = input;
  const known = sorted.get(swim.events);
  if (known) return known;
  const made = swim.events
    .map((event): TimedEvent => {
      const same = timed.get(event) ?? {
        event,
        time: eventTime(clock, event),
        variance: eventTimeVariance(clock, event, error.eventSd[event.kind]),
      };
      timed.set(event, same);
      return same;
    })
    .sort((a, b) => a.time - b.time);
  sorted.set(swim.events, made);
  return made;
}

function cyclesOf(events: readonly TimedEvent[], known: Kept): CycleFrame | null {
  const of = cycleEvents(events);
  const last = known.cycles;
  if (last && last.of.length === of.length && last.of.every((each, i) => each === of[i])) return last.frame;
  const frame = cycleFrame(of);
  known.cycles = { of, frame };
  return frame;
}
