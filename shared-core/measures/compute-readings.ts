import type { Swimmer } from '../swim-file/squad-schema';
import type { Swim, SwimCard } from '../swim-file/swim-schema';
import type { FrameTable } from '../timeline/frame-table';
import { type FrameTimesRecord, tableFromRecord } from '../timeline/frame-times-record';
import { assumedMarkingError } from '../uncertainty/assumed-marking-error';
import type { MarkingError } from '../uncertainty/marking-error';
import { type BodyContext, bodyContext, isWhole } from './body/context/body-context';
import type { BodyFamily } from './body/body-families';
import type { BodyGeometry } from './body/context/body-geometry';
import type { CycleFrame } from './body/context/cycle-frame';
import type { TimedEvent } from './timed-event';
import { families } from './families';
import { guardReadings } from './guard-readings';
import type { MissingReason, Reading } from './reading';
import { keptWith } from '../units/kept-with';
import { saidOfMarks } from './said-of-marks';
import { asSeen } from './seen-readings';

export interface ReadingKnowledge {
  /** The swimmer's record; null when it is not known who swims. */
  readonly swimmer: Swimmer | null;
  /** The coach's measured marking error; null takes the assumed one. */
  readonly markingError: MarkingError | null;
}

const assumed = new Map<number, MarkingError>();

/** The same table object for the same record, so that what hangs on it can be kept. */
const tableOf = keptWith((record: FrameTimesRecord): FrameTable => tableFromRecord(record));

function assumedFor(height: number): MarkingError {
  const error = assumed.get(height) ?? assumedMarkingError(height);
  assumed.set(height, error);
  return error;
}

/** A swim made ready for readings: sorted, timed, turned level. Cost: linear in marks. */
export function readingContext(swim: Swim, knowledge: ReadingKnowledge): BodyContext {
  return bodyContext({
    swim,
    clock: { table: tableOf(swim.clip.frameTimes), slowdown: swim.clip.slowdown.factor },
    error: knowledge.markingError ?? assumedFor(swim.clip.height),
    swimmer: knowledge.swimmer,
  });
}

/**
 * Every reading of the catalogue, computed or missing with its reasons. Pure; nothing of it is ever stored. Families none of
 * whose events, points or lines moved since the last time answer with what they found then.
 *
 * @param of the families wanted; doubts of times and sizes need those of kick frequency, stroke rate, kick amplitude and speed
 */
export function computeReadings(
  context: BodyContext,
  of: readonly BodyFamily[] = families,
): readonly Reading[] {
  const every = everyReading(context, of);
  return context.readsSeen ? every.map(asSeen) : every;
}

/** The same with those that are read from seen points and not proved for that: for proofs only. */
export const everyReading = (
  context: BodyContext,
  of: readonly BodyFamily[] = families,
): readonly Reading[] => saidOfMarks(context, familyReadings(context, of));

function familyReadings(context: BodyContext, of: readonly BodyFamily[]): readonly Reading[] {
  const known = isWhole(context) ? keptFor(context.geometry) : null;
  const readings = of.flatMap((family) => {
    const { looksAt } = family;
    if (!known || !looksAt) return family.read(context);
    const events = context.events.filter(({ event }) => looksAt.includes(event.kind));
    const { card } = context.input.swim;
    const last = known.get(family);
    if (last?.card === card && last.cycles === context.cycles && sameItems(last.events, events))
      return last.readings;
    const readings = family.read(context);
    known.set(family, { card, cycles: context.cycles, events, readings });
    return readings;
  });
  const guarded = guardReadings(context, readings);
  return context.outside.size === 0 ? guarded : guarded.map((each) => saidOutside(each, context));
}

/** Where a landmark is missing that is marked outside the picture, that is the first thing to mend. */
function saidOutside(reading: Reading, { outside }: BodyContext): Reading {
  if (reading.status === 'computed') return reading;
  const first = reading.reasons.flatMap((reason): MissingReason[] => {
    if (reason.code !== 'needs-landmark' && reason.code !== 'needs-denser-trace') return [];
    const frames = outside.get(reason.landmark);
    return frames === undefined ? [] : [{ code: 'outside-picture', landmark: reason.landmark, frames }];
  });
  return first.length === 0 ? reading : { ...reading, reasons: [...first, ...reading.reasons] };
}

interface KeptReadings {
  readonly card: SwimCard;
  readonly cycles: CycleFrame | null;
  readonly events: readonly TimedEvent[];
  readonly readings: readonly Reading[];
}

const kept = keptWith((_: BodyGeometry) => new Map<BodyFamily, KeptReadings>());

function keptFor(geometry: BodyGeometry): Map<BodyFamily, KeptReadings> {
  const known = kept(geometry);
  return known;
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}
