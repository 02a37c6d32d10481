import type { BodyContext } from '../body/context/body-context';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { Reading, ReadingDefinition } from '../reading';
import { eventsOf } from './event-list';
import { fitPeriod } from './fit-period';
import { strokePlaces } from './stroke-places';
import { strokeRow } from './stroke-row';
import { rhythmReadingsWords } from '../../words/rhythm-readings';

/** Stroke rate from hand entries, or another mark of the hands, by the same least squares as kick frequency. */
export function strokeRateReadings(context: BodyContext): readonly Reading[] {
  const typical = strokePlaces(context.events)?.typical;
  const hands = strokeRow(context.events, typical);
  const rhythm = fitPeriod([hands], typical);
  if (!rhythm) {
    const have = eventsOf(context.events, 'entry').length;
    return [missingReading('stroke-rate', { code: 'needs-events', kind: 'entry', have, need: 2 })];
  }
  // a gap of one and a half strokes holds a missed mark and is no single stroke
  const strokes = hands.slice(1).flatMap((next, i) => {
    const from = hands[i];
    return from && next.time - from.time <= 1.5 * rhythm.seconds ? [{ from, next }] : [];
  });
  return [
    computedReading(context, 'stroke-rate', {
      value: 60 / rhythm.seconds,
      unit: '1/min',
      ownVariance: (3600 * rhythm.variance) / rhythm.seconds ** 4,
      cycles: strokes.length,
      perCycle: strokes.map(({ from, next }) => ({
        value: 60 / (next.time - from.time),
        fromFrame: from.event.frame,
        toFrame: next.event.frame,
      })),
      frames: [],
      eventIds: hands.map((each) => each.event.id),
    }),
  ];
}

export const strokeRateDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'stroke-rate',
    group: 'stroke',
    label: rhythmReadingsWords('strokeRate'),
    brief: rhythmReadingsWords('strokesMinuteEntry'),
    definition: rhythmReadingsWords('sixtyOverCommon'),
    forCoach: rhythmReadingsWords('howQuicklyArms'),
    forSwimmer: rhythmReadingsWords('howManyStrokesYouWould'),
    source: rhythmReadingsWords('sr60TCommonDefinition'),
    digits: 1,
  },
];
