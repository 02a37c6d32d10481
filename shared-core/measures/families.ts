import { type BodyFamily, bodyFamilies } from './body/body-families';
import { kickRhythmDefinitions, kickRhythmReadings } from './events/kick-rhythm';
import { markedSpeedDefinitions, markedSpeedReadings } from './events/marked-speed';
import { strokeRateDefinitions, strokeRateReadings } from './events/stroke-rate';
import { timingReadings } from './events/timing';
import { timingDefinitions } from './events/timing-definitions';
import type { ReadingDefinition } from './reading';

/** All families of readings, in the order of the catalogue. */
export const families: readonly BodyFamily[] = [
  { definitions: timingDefinitions, read: timingReadings },
  { definitions: kickRhythmDefinitions, read: kickRhythmReadings },
  { definitions: strokeRateDefinitions, read: strokeRateReadings },
  { definitions: markedSpeedDefinitions, read: markedSpeedReadings },
  ...bodyFamilies,
];

/** Every reading's definition, in order. */
export const catalogue: readonly ReadingDefinition[] = families.flatMap((family) => family.definitions);
