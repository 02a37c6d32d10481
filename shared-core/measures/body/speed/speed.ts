import type { Reading, ReadingDefinition, ReadingNote } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { waveNotes } from '../wave/landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { speedVariationReadings } from './speed-variation';
import { speedNotes, speedOf, speedUnit } from './trace-speed';

/** Mean speed of hip and centre of mass, and how it swings within the cycle. */
export function speedReadings(context: BodyContext): readonly Reading[] {
  const means = (['hip', 'centre-of-mass'] as const).map((of): Reading => {
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
  return [...means, ...speedVariationReadings(context)];
}

export const speedDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'speed-hip',
    group: 'speed',
    label: 'Speed of the hips',
    brief: 'along travel, whole cycles',
    definition:
      'Slope of the hips’ way along travel over whole cycles, the surge within cycles fitted beside it. Camera fixed, or its movement taken out. The hip is not the centre of mass: within a cycle it swings more.',
    forCoach: 'How fast the swimmer went, on average over whole cycles.',
    forSwimmer: 'How fast you went.',
    source: 'Slope over whole cycles; hip against centre of mass in butterfly: Barbosa and others',
    digits: 2,
  },
  {
    id: 'speed-centre-of-mass',
    group: 'speed',
    label: 'Speed of the centre of mass',
    brief: 'along travel, whole cycles',
    definition:
      'The same for the whole-body centre of mass, from postures with all nine landmarks. Head taken at the ear, foot on the ankle–toe line.',
    forCoach: 'How fast the whole body went, on average over whole cycles.',
    forSwimmer: 'How fast your whole body went.',
    source: 'de Leva 1996, J Biomech 29:1223–1230, Table 4 (young adults)',
    digits: 2,
  },
  {
    id: 'speed-variation',
    group: 'speed',
    label: 'Speed variation within the cycle',
    brief: '100 · SD of speed / mean speed',
    definition:
      'Standard deviation of the fitted speed over the mean cycle, in % of mean speed; centre of mass where all landmarks are marked, else the hips.',
    forCoach: 'How evenly the swimmer moves; each slow spot has to be paid for by speeding up again.',
    forSwimmer: 'How even your speed is: smaller means smoother.',
    source: 'Intra-cycle velocity variation as used by the Barbosa group',
    digits: 1,
  },
  {
    id: 'speed-lowest',
    group: 'speed',
    label: 'Lowest speed in the cycle',
    brief: 'slowest instant',
    definition: 'Lowest value of the fitted speed over the mean cycle.',
    forCoach: 'How slow the slowest instant is; look at the frame it falls on.',
    forSwimmer: 'Your slowest moment in each cycle.',
    source: 'Our own definition',
    digits: 2,
  },
  {
    id: 'speed-highest',
    group: 'speed',
    label: 'Highest speed in the cycle',
    brief: 'fastest instant',
    definition: 'Highest value of the fitted speed over the mean cycle.',
    forCoach: 'How fast the fastest instant is; look at the frame it falls on.',
    forSwimmer: 'Your fastest moment in each cycle.',
    source: 'Our own definition',
    digits: 2,
  },
];
