import {
  combine,
  difference,
  quotient,
  sum,
  type Tracked,
  trackedMark,
  trackedVariance,
} from '../../uncertainty/tracked';
import type { BodyContext } from '../body/context/body-context';
import type { TimedEvent } from '../timed-event';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import { z95 } from '../../uncertainty/normal-quantile';
import type { MissingReason, Reading, ReadingDefinition } from '../reading';
import { eventsOf, measuredMarks } from './event-list';
import { fitPeriod } from './fit-period';
import { markVariances, timeOf, trackedReading } from './tracked-reading';
import { wholeNumberVariance } from './whole-number';
import { rhythmReadingsWords } from '../../words/rhythm-readings';

/** World Aquatics swimming rules (SW): the head must break the surface by 15 m in butterfly and backstroke. */
const ruleMetres = 15;

/**
 * Swimmers go faster under water than after it; between two distance marks around the breakout a steady speed is
 * assumed. Standard deviation of what that costs half way between them, as a share of their distance. Our default.
 */
const unsteadyShare = 0.04;

const thirds = ['first', 'middle', 'last'] as const;
const ids = [
  'underwater-time',
  'underwater-kicks',
  'underwater-kick-frequency',
  ...thirds.map((third) => `underwater-kick-frequency-${third}-third`),
  'underwater-distance-marks',
  'underwater-speed',
];

/** Push-off to breakout: time, kicks, kick frequency whole and by thirds, and distance where distance marks tell. */
export function underwaterPartReadings(context: BodyContext): readonly Reading[] {
  const start = eventsOf(context.events, 'push-off')[0];
  const end = eventsOf(context.events, 'breakout').find((each) => !start || each.time > start.time);
  if (!start || !end) {
    const reasons: MissingReason[] = [];
    if (!start) reasons.push({ code: 'needs-events', kind: 'push-off', have: 0, need: 1 });
    if (!end) reasons.push({ code: 'needs-events', kind: 'breakout', have: 0, need: 1 });
    return ids.map((id) => missingReading(id, ...reasons));
  }
  const time = trackedReading(context, 'underwater-time', 's', difference(timeOf(end), timeOf(start)), []);
  const third = (end.time - start.time) / 3;
  return [
    time,
    kickCount(context, start, end),
    frequency(context, 'underwater-kick-frequency', start.time, end.time),
    ...thirds.map((name, i) =>
      frequency(
        context,
        `underwater-kick-frequency-${name}-third`,
        start.time + i * third,
        start.time + (i + 1) * third,
      ),
    ),
    distance(context, end),
    speed(context, start, end),
  ];
}

function kicksWithin(context: BodyContext, from: number, to: number): readonly (readonly TimedEvent[])[] {
  return (['kick-top', 'kick-bottom'] as const).map((kind) =>
    eventsOf(context.events, kind).filter((each) => each.time >= from && each.time <= to),
  );
}

function kickCount(context: BodyContext, start: TimedEvent, end: TimedEvent): Reading {
  const rows = kicksWithin(context, start.time, end.time);
  // a kick is done at its bottom; where bottoms are not marked, tops stand for them
  const row = rows[1]?.length ? rows[1] : (rows[0] ?? []);
  if (row.length === 0)
    return missingReading('underwater-kicks', {
      code: 'needs-events',
      kind: 'kick-bottom',
      have: 0,
      need: 1,
    });
  return computedReading(context, 'underwater-kicks', {
    value: row.length,
    unit: 'count',
    ownVariance: wholeNumberVariance,
    cycles: row.length,
    frames: [],
    eventIds: [start, ...row, end].map((each) => each.event.id),
  });
}

function frequency(context: BodyContext, id: string, from: number, to: number): Reading {
  const rows = kicksWithin(context, from, to);
  const rhythm = fitPeriod(rows);
  if (!rhythm) {
    const have = Math.max(...rows.map((row) => row.length));
    return missingReading(id, { code: 'needs-events', kind: 'kick-top', have, need: 2 });
  }
  const used = rows.filter((row) => row.length >= 2).flat();
  return computedReading(context, id, {
    value: 1 / rhythm.seconds,
    unit: 'Hz',
    ownVariance: rhythm.variance / rhythm.seconds ** 4,
    cycles: Math.max(...rows.map((row) => row.length)) - 1,
    frames: [],
    eventIds: used.map((each) => each.event.id),
  });
}

interface BreakoutPlace {
  /** Metres from the wall at the breakout, with the marks' times it depends on. */
  readonly metres: Tracked;
  /** What an unsteady speed between the marks may cost, m². */
  readonly unsteady: number;
  readonly eventIds: readonly string[];
}

/** Where the head was at the breakout, by the distance marks before and after it; or why that can't be told. */
function breakoutPlace(context: BodyContext, end: TimedEvent): BreakoutPlace | MissingReason {
  const marks = measuredMarks(context.events);
  const before = marks.filter((each) => each.time <= end.time).at(-1);
  const after = marks.find((each) => each.time > end.time);
  if (!before && !after) return { code: 'needs-events', kind: 'distance-mark', have: 0, need: 2 };
  if (!before || !after)
    return {
      code: 'needs-event-beside',
      kind: 'distance-mark',
      side: before ? 'after' : 'before',
      of: 'breakout',
    };
  const from = before.metres;
  const gap = after.metres - from;
  const share = quotient(difference(timeOf(end), timeOf(before)), difference(timeOf(after), timeOf(before)));
  if (!share || !(gap > 0)) return { code: 'degenerate', what: 'zero-length' };
  const metres: Tracked = sum([
    { value: from, slopes: new Map() },
    combine(gap, share, 0, trackedMark(end.event.id, 0)),
  ]);
  return {
    metres,
    unsteady: (unsteadyShare * gap * 4 * share.value * (1 - share.value)) ** 2,
    eventIds: [before, end, after].map((each) => each.event.id),
  };
}

function distance(context: BodyContext, end: TimedEvent): Reading {
  const id = 'underwater-distance-marks';
  const place = breakoutPlace(context, end);
  if ('code' in place) return missingReading(id, place);
  const { metres } = place;
  const ownVariance = trackedVariance(metres, markVariances(context)) + place.unsteady;
  return computedReading(context, id, {
    value: metres.value,
    unit: 'm',
    ownVariance,
    cycles: 0,
    frames: [],
    eventIds: place.eventIds,
    usesScale: false,
    notes: metres.value > ruleMetres - z95 * Math.sqrt(ownVariance) ? ['beyond-15-m'] : [],
  });
}

/** Mean speed of the underwater part: metres from the wall at the breakout over the time since the push-off. */
function speed(context: BodyContext, start: TimedEvent, end: TimedEvent): Reading {
  const id = 'underwater-speed';
  const place = breakoutPlace(context, end);
  if ('code' in place) return missingReading(id, place);
  const time = difference(timeOf(end), timeOf(start));
  const value = quotient(place.metres, time);
  if (!value) return missingReading(id, { code: 'degenerate', what: 'equal-times' });
  return computedReading(context, id, {
    value: value.value,
    unit: 'm/s',
    ownVariance: trackedVariance(value, markVariances(context)) + place.unsteady / time.value ** 2,
    cycles: 0,
    frames: [],
    eventIds: [start.event.id, ...place.eventIds],
    usesScale: false,
  });
}

const rule = rhythmReadingsWords('worldAquaticsSwimming');

export const underwaterPartDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'underwater-time',
    group: 'course',
    label: rhythmReadingsWords('underwaterPartTime'),
    brief: rhythmReadingsWords('pushOffBreakout'),
    definition: rhythmReadingsWords('secondsFromPush'),
    forCoach: rhythmReadingsWords('howLongUnderwater'),
    forSwimmer: rhythmReadingsWords('howLongYourPush'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
  {
    id: 'underwater-kicks',
    group: 'course',
    label: rhythmReadingsWords('underwaterPartKicks'),
    brief: rhythmReadingsWords('kickBottomsBefore'),
    definition: rhythmReadingsWords('kickBottomsMarked'),
    forCoach: rhythmReadingsWords('howManyKicks'),
    forSwimmer: rhythmReadingsWords('howManyKicksYou'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 0,
  },
  {
    id: 'underwater-kick-frequency',
    group: 'course',
    label: rhythmReadingsWords('underwaterPartKick'),
    brief: rhythmReadingsWords('kicksSecondBefore'),
    definition: rhythmReadingsWords('kickFrequencyTops'),
    forCoach: rhythmReadingsWords('howQuicklyLegsWork'),
    forSwimmer: rhythmReadingsWords('howManyKicksSecond'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
  ...thirds.map(
    (third): ReadingDefinition => ({
      id: `underwater-kick-frequency-${third}-third`,
      group: 'course',
      label: rhythmReadingsWords('underwaterKickFrequency', { third }),
      brief: rhythmReadingsWords('thirdTimeUnder', { third }),
      definition: rhythmReadingsWords('kickFrequencyTopsBottoms', { third }),
      forCoach: rhythmReadingsWords('whetherKickKeeps'),
      forSwimmer: rhythmReadingsWords('whetherYouKeep'),
      source: rhythmReadingsWords('ourOwnDefinition'),
      digits: 2,
    }),
  ),
  {
    id: 'underwater-distance-marks',
    group: 'course',
    label: rhythmReadingsWords('underwaterPartDistance'),
    brief: rhythmReadingsWords('metresAtBreakout'),
    definition: rhythmReadingsWords('metresFromWall'),
    forCoach: rhythmReadingsWords('whereHeadBroke'),
    forSwimmer: rhythmReadingsWords('whereYouCame'),
    source: rule,
    digits: 1,
  },
  {
    id: 'underwater-speed',
    group: 'course',
    label: rhythmReadingsWords('underwaterPartMean'),
    brief: rhythmReadingsWords('metresAtBreakoutTime'),
    definition: rhythmReadingsWords('metresFromWallAt'),
    forCoach: rhythmReadingsWords('howFastUnderwater'),
    forSwimmer: rhythmReadingsWords('howFastYouUnder'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
];
