import type { BodyContext } from '../body/context/body-context';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { Reading, ReadingDefinition } from '../reading';
import { markedSpeedVariance, speedBetweenMarks } from './speed-between-marks';

/** Mean speed between the first and last distance mark. */
export function markedSpeedReadings(context: BodyContext): readonly Reading[] {
  const result = speedBetweenMarks(context);
  if (!result.ok) return [missingReading('speed-marks', result.reason)];
  const { found } = result;
  return [
    computedReading(context, 'speed-marks', {
      value: found.speed.value,
      unit: 'm/s',
      ownVariance: markedSpeedVariance(context, found),
      cycles: 0,
      frames: [],
      eventIds: found.eventIds,
      usesScale: false,
    }),
  ];
}

export const markedSpeedDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'speed-marks',
    group: 'speed',
    label: 'Speed between distance marks',
    brief: 'first to last mark',
    definition:
      'Metres between the first and the last distance mark divided by the time between them. Needs no scale.',
    forCoach: 'Mean speed over a measured stretch; the pool does the measuring.',
    forSwimmer: 'How fast you went from one mark to the other.',
    source: 'Our own definition.',
    digits: 2,
  },
];
