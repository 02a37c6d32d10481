import type { EventKind } from '../../marks/event-kind';
import { standardDeviation } from '../../signal/standard-deviation';
import { mean, type Tracked, trackedVariance } from '../../uncertainty/tracked';
import type { BodyContext } from '../body/context/body-context';
import type { TimedEvent } from '../timed-event';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { MissingReason, Reading, ReadingNote, ReadingUnit } from '../reading';
import { keptWith } from '../../units/kept-with';

/** One cycle's value with the frames it spans. */
export interface TrackedCycle {
  readonly value: Tracked;
  readonly fromFrame: number;
  readonly toFrame: number;
  /** Variance beside that of its marks, unit². */
  readonly added?: number;
}

/** A mark's time as a tracked number. */
export function timeOf(mark: TimedEvent): Tracked {
  return mark.put ?? { value: mark.time, slopes: new Map([[mark.event.id, 1]]) };
}

/** Cycles of a swim whose values were not all marked, and how much single ones may differ. */
export interface Unmarked {
  /** All cycles the mean is to stand for, those without marks as well. */
  readonly cycles: number;
  /** Standard deviation from cycle to cycle to be expected where fewer than three are marked, in the reading's unit. */
  readonly usualSd: number;
}

/**
 * Variance that a mean over the marked cycles only brings for all of them: of a sample without putting back. Their own spread
 * where three are marked or more, else the usual one.
 */
function unmarkedVariance(cycles: readonly TrackedCycle[], { cycles: all, usualSd }: Unmarked): number {
  const marked = cycles.length;
  if (marked >= all) return 0;
  const own = standardDeviation(cycles.map(({ value }) => value.value));
  const sd = marked >= 3 && own !== null ? own : usualSd;
  return sd ** 2 * (1 / marked - 1 / all);
}

/** Mean of per-cycle values as a reading, with the marks it depends on; missing with `reasons` when there is none. */
export function meanReading(
  context: BodyContext,
  id: string,
  unit: ReadingUnit,
  cycles: readonly TrackedCycle[],
  reasons: readonly MissingReason[],
  notes: readonly ReadingNote[] = [],
  unmarked: Unmarked | null = null,
): Reading {
  const average = mean(cycles.map((each) => each.value));
  if (!average) return missingReading(id, ...reasons);
  const own = cycles.reduce((sum, { added: more = 0 }) => sum + more, 0) / cycles.length ** 2;
  const added = own + (unmarked ? unmarkedVariance(cycles, unmarked) : 0);
  return trackedReading(context, id, unit, average, cycles, notes, true, added);
}

const kept = keptWith(
  (context: BodyContext): ReadonlyMap<string, number> =>
    new Map(context.events.map((each) => [each.event.id, each.variance])),
);

/** Variance of each mark's time, s², by event id. */
export function markVariances(context: BodyContext): ReadonlyMap<string, number> {
  const known = kept(context);
  return known;
}

/** A tracked value as a reading. */
export function trackedReading(
  context: BodyContext,
  id: string,
  unit: ReadingUnit,
  value: Tracked,
  cycles: readonly TrackedCycle[],
  notes: readonly ReadingNote[] = [],
  /** False when the value is no mean of the cycles' values, so that their spread makes no interval. */
  spread = true,
  /** Variance beside that of the marks, unit². */
  added = 0,
): Reading {
  const variances = markVariances(context);
  return computedReading(context, id, {
    value: value.value,
    unit,
    ownVariance: trackedVariance(value, variances) + added,
    ...(context.input.error.freedom ? { byKind: varianceByKind(context, value) } : {}),
    spread,
    // of cycles: a gap, a phase or a half kick; other instants are a whole part of the swim apart
    instants: cycles.length > 0,
    cycles: cycles.length,
    perCycle: cycles.map((each) => ({
      value: each.value.value,
      fromFrame: each.fromFrame,
      toFrame: each.toFrame,
    })),
    frames: [],
    // a mark whose weight cancels (the inner ends of a telescoping mean) was still looked at
    eventIds: marksOf(value, cycles),
    notes,
  });
}

/** What the marking error of each kind of event brings to a value's variance; an instant may carry a smaller error of its own. */
function varianceByKind({ events, input }: BodyContext, { slopes }: Tracked): ReadonlyMap<EventKind, number> {
  const byKind = new Map<EventKind, number>();
  for (const { event, variance } of events) {
    const slope = slopes.get(event.id);
    if (slope === undefined) continue;
    const own = slope ** 2 * Math.min(variance, input.error.eventSd[event.kind] ** 2);
    byKind.set(event.kind, (byKind.get(event.kind) ?? 0) + own);
  }
  return byKind;
}

function marksOf(value: Tracked, cycles: readonly TrackedCycle[]): readonly string[] {
  const ids = new Set<string>();
  for (const each of cycles) for (const id of each.value.slopes.keys()) ids.add(id);
  for (const id of value.slopes.keys()) ids.add(id);
  return [...ids];
}
