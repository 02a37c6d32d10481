import type { BodyFamily } from '../body/body-families';
import { propulsionDefinitions, propulsionReadings } from '../products/propulsion';
import { strokeProductDefinitions, strokeProductReadings } from '../products/stroke-products';
import { kickRhythmDefinitions, kickRhythmReadings } from './kick-rhythm';
import { markedSpeedDefinitions, markedSpeedReadings } from './marked-speed';
import { strokeCountDefinitions, strokeCountReadings } from './stroke-count';
import { strokeRateDefinitions, strokeRateReadings } from './stroke-rate';
import { timingReadings } from './timing';
import { timingDefinitions } from './timing-definitions';
import { underwaterPartDefinitions, underwaterPartReadings } from './underwater-part';

/** Readings that events give, alone or multiplied with a speed, an amplitude or a wave; in the order of the catalogue. */
export const eventFamilies: readonly BodyFamily[] = [
  { definitions: timingDefinitions, read: timingReadings },
  { definitions: kickRhythmDefinitions, read: kickRhythmReadings },
  { definitions: propulsionDefinitions, read: propulsionReadings },
  { definitions: strokeRateDefinitions, read: strokeRateReadings },
  { definitions: strokeProductDefinitions, read: strokeProductReadings },
  { definitions: strokeCountDefinitions, read: strokeCountReadings },
  { definitions: markedSpeedDefinitions, read: markedSpeedReadings },
  { definitions: underwaterPartDefinitions, read: underwaterPartReadings },
];
