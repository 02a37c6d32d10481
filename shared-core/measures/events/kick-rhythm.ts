import { difference, mean, quotient, type Tracked } from '../../uncertainty/tracked';
import type { BodyContext } from '../body/context/body-context';
import type { TimedEvent } from '../timed-event';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { MissingReason, Reading, ReadingDefinition } from '../reading';
import { eventsOf } from './event-list';
import { inTurn } from './kick-places';
import { type KickPeriod, kickPeriod } from './kick-period';
import { strokePlaces } from './stroke-places';
import { timeOf, type TrackedCycle, trackedReading } from './tracked-reading';
import { rhythmReadingsWords } from '../../words/rhythm-readings';

/** Beyond these a kick frequency is hardly a human's: a wrong capture rate is far likelier. Our default, no source. */
export const humanKickHz = { low: 0.5, high: 4 } as const;

/** A down- or up-kick as long as this many whole kicks hides a kick that was not marked. Our default. */
const missedKick = 1;

const frequencyIds = ['kick-frequency', 'kick-tempo', 'kick-rate-per-minute'] as const;

/** Kick frequency, tempo and rate by least squares over tops and bottoms; down and up times and their ratio. */
export function kickRhythmReadings(context: BodyContext): readonly Reading[] {
  const tops = eventsOf(context.events, 'kick-top');
  const bottoms = eventsOf(context.events, 'kick-bottom');
  const rhythm = kickPeriod(context);
  return [
    ...frequencyReadings(context, tops, bottoms, rhythm),
    ...downAndUp(context, tops, bottoms, rhythm?.seconds ?? Number.POSITIVE_INFINITY),
  ];
}

function frequencyReadings(
  context: BodyContext,
  tops: readonly TimedEvent[],
  bottoms: readonly TimedEvent[],
  rhythm: KickPeriod | null,
): readonly Reading[] {
  const contradiction = context.cycles?.contradiction;
  if (contradiction) return frequencyIds.map((id) => missingReading(id, contradiction));
  if (!rhythm) {
    const kind = bottoms.length > tops.length ? 'kick-bottom' : 'kick-top';
    const have = Math.max(tops.length, bottoms.length);
    return frequencyIds.map((id) => missingReading(id, { code: 'needs-events', kind, have, need: 2 }));
  }
  const { seconds: period, variance } = rhythm;
  const hertz = 1 / period;
  const shared = {
    cycles: rhythm.cycles,
    frames: [],
    eventIds: rhythm.eventIds,
    notes: hertz < humanKickHz.low || hertz > humanKickHz.high ? (['implausible-for-a-human'] as const) : [],
  };
  const perCycle = (of: (gap: number) => number) =>
    rhythm.spans.map((each) => ({
      value: of(each.seconds),
      fromFrame: each.fromFrame,
      toFrame: each.toFrame,
    }));
  return [
    computedReading(context, 'kick-frequency', {
      ...shared,
      value: hertz,
      unit: 'Hz',
      ownVariance: variance / period ** 4,
      perCycle: perCycle((gap) => 1 / gap),
    }),
    computedReading(context, 'kick-tempo', {
      ...shared,
      value: period,
      unit: 's',
      ownVariance: variance,
      perCycle: perCycle((gap) => gap),
    }),
    computedReading(context, 'kick-rate-per-minute', {
      ...shared,
      value: 60 * hertz,
      unit: '1/min',
      ownVariance: (3600 * variance) / period ** 4,
      perCycle: perCycle((gap) => 60 / gap),
    }),
  ];
}

function downAndUp(
  context: BodyContext,
  tops: readonly TimedEvent[],
  bottoms: readonly TimedEvent[],
  period: number,
): readonly Reading[] {
  const marks = [...tops, ...bottoms].sort((a, b) => a.time - b.time);
  const neighbours = placesInTurn(context);
  const halves = (first: 'kick-top' | 'kick-bottom'): TrackedCycle[] =>
    marks.slice(1).flatMap((to, i) => {
      const from = marks[i];
      if (!from || from.event.kind !== first || to.event.kind === first) return [];
      const time = to.time - from.time;
      // half a kick as long as a whole one and more has a missed kick inside
      if (time <= 0 || !(neighbours ? neighbours(from, to) : time < missedKick * period)) return [];
      return [
        {
          value: difference(timeOf(to), timeOf(from)),
          fromFrame: from.event.frame,
          toFrame: to.event.frame,
        },
      ];
    });
  const down = halves('kick-top');
  const up = halves('kick-bottom');
  const reasons = turnsMissing(tops.length, bottoms.length);
  const isWhole = down.length + up.length === marks.length - 1;
  const downMean = evenMean(context, down, isWhole);
  const upMean = evenMean(context, up, isWhole);
  const ratio: Tracked | null = downMean && upMean ? quotient(downMean, upMean) : null;
  return [
    downMean
      ? trackedReading(context, 'down-kick-time', 's', downMean, down)
      : missingReading('down-kick-time', ...reasons),
    upMean
      ? trackedReading(context, 'up-kick-time', 's', upMean, up)
      : missingReading('up-kick-time', ...[...reasons].reverse()),
    ratio
      ? trackedReading(context, 'down-up-ratio', 'ratio', ratio, ratioCycles(down, up))
      : missingReading('down-up-ratio', ...reasons),
  ];
}

/** Half kicks by the kick of the stroke they belong to; one group where the kicks of a stroke are not told apart. */
function byKick(
  { events }: BodyContext,
  halves: readonly TrackedCycle[],
): readonly (readonly TrackedCycle[])[] {
  const places = strokePlaces(events)?.feet?.places;
  if (!places) return [halves];
  const placeOf = new Map(
    places.flatMap(({ end, marks }, i) => marks.map(({ event }) => [`${end} ${event.frame}`, i] as const)),
  );
  const groups = new Map<number, TrackedCycle[]>();
  for (const half of halves) {
    const place = placeOf.get(`top ${half.fromFrame}`) ?? placeOf.get(`bottom ${half.fromFrame}`) ?? -1;
    groups.set(place, [...(groups.get(place) ?? []), half]);
  }
  return [...groups.values()];
}

/**
 * Mean of half kicks. Where some are not marked and some kicks of the stroke have more of them than others, each kick of the
 * stroke weighs alike: they differ always in the same way.
 *
 * @param isWhole every mark follows the one before with no end of a kick between
 */
function evenMean(context: BodyContext, halves: readonly TrackedCycle[], isWhole: boolean): Tracked | null {
  if (isWhole) return mean(halves.map((each) => each.value));
  const groups = byKick(context, halves);
  const counts = groups.map((group) => group.length);
  if (Math.max(...counts) === Math.min(...counts)) return mean(halves.map((each) => each.value));
  return mean(groups.flatMap((group) => mean(group.map((each) => each.value)) ?? []));
}

/** Whether down- or up-kicks of some kick of the stroke are nowhere marked, so that their mean is that of the others. */
export function halfKicksMissing(context: BodyContext): boolean {
  const feet = strokePlaces(context.events)?.feet;
  if (!feet || feet.kicks < 2) return false;
  const neighbours = placesInTurn(context);
  const marks = feet.places.flatMap((place) => place.marks.map((mark) => ({ mark, place })));
  marks.sort((a, b) => a.mark.time - b.mark.time);
  const seen = new Set(
    marks.slice(1).flatMap(({ mark }, i) => {
      const from = marks[i];
      return from && neighbours?.(from.mark, mark) ? [from.place] : [];
    }),
  );
  return seen.size > 0 && seen.size < 2 * feet.kicks;
}

/** Whether two marks follow one another with no kick end between; null where the kicks of a stroke are not told apart. */
function placesInTurn({ events }: BodyContext): ((from: TimedEvent, to: TimedEvent) => boolean) | null {
  const strokes = strokePlaces(events);
  return strokes?.feet ? inTurn(strokes.feet, strokes.clock) : null;
}

/** Each down-kick over the up-kick that follows it. */
function ratioCycles(down: readonly TrackedCycle[], up: readonly TrackedCycle[]): readonly TrackedCycle[] {
  const upFrom = new Map(up.map((each) => [each.fromFrame, each]));
  return down.flatMap((first) => {
    const second = upFrom.get(first.toFrame);
    const value = second ? quotient(first.value, second.value) : null;
    return second && value ? [{ value, fromFrame: first.fromFrame, toFrame: second.toFrame }] : [];
  });
}

export const kickRhythmDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'kick-frequency',
    group: 'kick',
    label: rhythmReadingsWords('kickFrequency'),
    brief: rhythmReadingsWords('wholeKicksSecond'),
    definition: rhythmReadingsWords('wholeKicksDown'),
    forCoach: rhythmReadingsWords('howQuicklyLegs'),
    forSwimmer: rhythmReadingsWords('howManyWhole'),
    source: rhythmReadingsWords('definitionConnaboyEt'),
    digits: 2,
  },
  {
    id: 'kick-tempo',
    group: 'kick',
    label: rhythmReadingsWords('kickTempo'),
    brief: rhythmReadingsWords('timeOneWhole'),
    definition: rhythmReadingsWords('secondsFromOne'),
    forCoach: rhythmReadingsWords('sameKickFrequency'),
    forSwimmer: rhythmReadingsWords('howLongOneWhole'),
    source: rhythmReadingsWords('oneOverKickFrequency'),
    digits: 3,
  },
  {
    id: 'kick-rate-per-minute',
    group: 'kick',
    label: rhythmReadingsWords('kicksPerMinute'),
    brief: rhythmReadingsWords('n60KickFrequency'),
    definition: rhythmReadingsWords('wholeKicksMinute'),
    forCoach: rhythmReadingsWords('kickFrequencyUnit'),
    forSwimmer: rhythmReadingsWords('howManyWholeKicks'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 0,
  },
  {
    id: 'down-kick-time',
    group: 'kick',
    label: rhythmReadingsWords('downKickTime'),
    brief: rhythmReadingsWords('kickTopKickBottom'),
    definition: rhythmReadingsWords('meanSecondsFrom'),
    forCoach: rhythmReadingsWords('howLongFeetTake'),
    forSwimmer: rhythmReadingsWords('howLongYourFeet'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 3,
  },
  {
    id: 'up-kick-time',
    group: 'kick',
    label: rhythmReadingsWords('upKickTime'),
    brief: rhythmReadingsWords('kickBottomKick'),
    definition: rhythmReadingsWords('meanSecondsFromEach'),
    forCoach: rhythmReadingsWords('howLongFeetTakeCome'),
    forSwimmer: rhythmReadingsWords('howLongYourFeetTake'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 3,
  },
  {
    id: 'down-up-ratio',
    group: 'kick',
    label: rhythmReadingsWords('downKickUpKick'),
    brief: rhythmReadingsWords('below1DownQuicker'),
    definition: rhythmReadingsWords('meanDownKick'),
    forCoach: rhythmReadingsWords('whetherKickEven'),
    forSwimmer: rhythmReadingsWords('whetherYouKick'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
];

/** Why there is no half of a kick: no mark of one end of it, or none that follows one of the other end. */
function turnsMissing(tops: number, bottoms: number): readonly MissingReason[] {
  const none: MissingReason[] = [];
  if (tops === 0) none.push({ code: 'needs-events', kind: 'kick-top', have: 0, need: 1 });
  if (bottoms === 0) none.push({ code: 'needs-events', kind: 'kick-bottom', have: 0, need: 1 });
  if (none.length > 0) return none;
  return [
    { code: 'needs-event-beside', kind: 'kick-bottom', side: 'after', of: 'kick-top' },
    { code: 'needs-event-beside', kind: 'kick-top', side: 'after', of: 'kick-bottom' },
  ];
}
