import type { Reading, ReadingDefinition, ReadingNote } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { waveNotes } from '../wave/landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { speedNotes, speedOf, speedUnit } from './trace-speed';
import { speedReadingsWords } from '../../../words/speed-readings';

/** Mean speed of hip and centre of mass. */
export function speedReadings(context: BodyContext): readonly Reading[] {
  return (['hip', 'centre-of-mass'] as const).map((of): Reading => {
    const id = `speed-${of}`;
    const result = speedOf(context, of);
    if (!result.ok) return missingReading(id, ...result.reasons);
    const { speed } = result;
    const part = unitPart(context, speed.value);
    const notes: ReadingNote[] = [...speedNotes(context, { of })];
    if (!speed.wave) notes.push('sparse-trace');
    else notes.push(...waveNotes(speed.wave));
    return computedReading(context, id, {
      value: speed.value,
      unit: speedUnit(context),
      ownVariance: speed.variance + part.own,
      sharedVariance: part.shared,
      cycles: speed.cycles,
      frames: speed.frames,
      landmarks: speed.landmarks,
      eventIds: speed.eventIds,
      usesLevel: true,
      usesTravel: true,
      notes,
    });
  });
}

export const speedDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'speed-hip',
    group: 'speed',
    label: speedReadingsWords('speedHips'),
    brief: speedReadingsWords('alongTravelWhole'),
    definition: speedReadingsWords('slopeHipsWay'),
    forCoach: speedReadingsWords('howFastSwimmer'),
    forSwimmer: speedReadingsWords('howFastYouWent'),
    source: speedReadingsWords('slopeOverWhole'),
    digits: 2,
  },
  {
    id: 'speed-centre-of-mass',
    group: 'speed',
    label: speedReadingsWords('speedCentreMass'),
    brief: speedReadingsWords('alongTravelWhole'),
    definition: speedReadingsWords('sameWholeBody'),
    forCoach: speedReadingsWords('howFastWhole'),
    forSwimmer: speedReadingsWords('howFastYourWhole'),
    source: speedReadingsWords('deLeva1996JBiomech'),
    digits: 2,
  },
];
