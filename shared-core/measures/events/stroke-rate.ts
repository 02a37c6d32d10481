import type { BodyContext } from '../body/context/body-context';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { Reading, ReadingDefinition } from '../reading';
import { eventsOf } from './event-list';
import { fitPeriod } from './fit-period';
import { strokePlaces } from './stroke-places';
import { strokesOf } from './strokes';
import { rhythmReadingsWords } from '../../words/rhythm-readings';

/** Stroke rate from hand entries, by the same least squares as kick frequency. */
export function strokeRateReadings(context: BodyContext): readonly Reading[] {
  const entries = eventsOf(context.events, 'entry');
  const rhythm = fitPeriod([entries], strokePlaces(context.events)?.typical);
  if (!rhythm)
    return [
      missingReading('stroke-rate', { code: 'needs-events', kind: 'entry', have: entries.length, need: 2 }),
    ];
  const strokes = strokesOf(context.events);
  return [
    computedReading(context, 'stroke-rate', {
      value: 60 / rhythm.seconds,
      unit: '1/min',
      ownVariance: (3600 * rhythm.variance) / rhythm.seconds ** 4,
      cycles: strokes.length,
      perCycle: strokes.map((stroke) => ({
        value: 60 / (stroke.next.time - stroke.entry.time),
        fromFrame: stroke.entry.event.frame,
        toFrame: stroke.next.event.frame,
      })),
      frames: [],
      eventIds: entries.map((each) => each.event.id),
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
