import type { BodyContext } from '../body/context/body-context';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { Reading, ReadingDefinition } from '../reading';
import { markedSpeedVariance, speedBetweenMarks } from './speed-between-marks';
import { rhythmReadingsWords } from '../../words/rhythm-readings';

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
    label: rhythmReadingsWords('speedBetweenDistance'),
    brief: rhythmReadingsWords('firstLastMark'),
    definition: rhythmReadingsWords('metresBetweenFirst'),
    forCoach: rhythmReadingsWords('meanSpeedOver'),
    forSwimmer: rhythmReadingsWords('howFastYouWent'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
];
