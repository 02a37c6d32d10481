import { type EventKind, eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { BodyContext } from '#core/measures/body/body-context';
import { readingContext } from '#core/measures/compute-readings';
import { type EventMark, plainMark, type Swim } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { aSwim } from '#tests/renderer/a-swim';
import { normal } from '../../../sample-clips/model/seeded';

export interface TrueInstant {
  readonly kind: EventKind;
  readonly time: number;
  readonly metres?: number;
}

export interface Film {
  /** Pictures a real second. */
  readonly rate: number;
  readonly slowdown: number;
  /** Spread of the gaps between pictures, as a share of the gap; 0 for an even rate. */
  readonly uneven: number;
  /** Standard deviation of one mark beside rounding, real seconds. */
  readonly eventSd: number;
}

export function markingErrorOf(eventSd: number): MarkingError {
  return {
    basis: 'measured',
    measured: { events: [...eventKinds], landmarks: [...landmarkNames], followed: [...landmarkNames] },
    eventSd: Object.fromEntries(eventKinds.map((kind) => [kind, eventSd])) as Record<EventKind, number>,
    landmarkSd: Object.fromEntries(landmarkNames.map((name) => [name, 2])) as MarkingError['landmarkSd'],
    followedSd: Object.fromEntries(landmarkNames.map((name) => [name, 4])) as MarkingError['followedSd'],
    scenePointSd: 2,
  };
}

/**
 * Marks a swim as a coach would: each instant, mistaken by a normal error, on the picture that starts nearest to it.
 * A picture shows the moment its exposure starts, so nearest-start rounding has no lean to either side.
 */
export function markInstants(
  instants: readonly TrueInstant[],
  film: Film,
  random: () => number,
  change: Partial<Swim> = {},
): Swim {
  const ticksPerSecond = 90_000;
  const end = Math.max(...instants.map((each) => each.time)) + 1;
  const starts: number[] = [];
  for (let time = 0; time < end; ) {
    starts.push(Math.round(time * film.slowdown * ticksPerSecond));
    time += (1 + film.uneven * (random() - 0.5)) / film.rate;
  }
  const last = starts.at(-1) ?? 0;
  const table = { ticksPerSecond, starts, endTick: last + 1000 };
  const realOf = (frame: number): number => (starts[frame] ?? last) / ticksPerSecond / film.slowdown;
  const nearest = (time: number): number => {
    let best = 0;
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (realOf(middle) <= time) low = middle;
      else high = middle - 1;
    }
    best = low;
    return best + 1 < starts.length && realOf(best + 1) - time < time - realOf(best) ? best + 1 : best;
  };
  const events = instants.map(
    (each, i): EventMark => ({
      id: `e${i}`,
      kind: each.kind,
      frame: nearest(each.time + film.eventSd * normal(random)),
      ...plainMark,
      breathTo: each.kind === 'breath' ? 'front' : null,
      metres: each.metres ?? null,
    }),
  );
  const base = aSwim();
  return {
    ...base,
    clip: {
      ...base.clip,
      frameTimes: recordFromTable(table),
      slowdown: { factor: film.slowdown, source: 'coach' },
    },
    events,
    ...change,
  };
}

export function contextOf(swim: Swim, eventSd: number): BodyContext {
  return readingContext(swim, { swimmer: null, markingError: markingErrorOf(eventSd) });
}
