import type { Reading, ReadingDefinition } from '../reading';
import type { BodyContext } from './body-context';
import { bodyWaveDefinitions, bodyWaveReadings } from './body-wave-speed';
import { footSpeedDefinitions, footSpeedReadings } from './foot-speed';
import { kickAmplitudeDefinitions, kickAmplitudeReadings } from './kick-amplitude';
import { postureDefinitions, postureReadings } from './posture';
import { speedDefinitions, speedReadings } from './speed';
import { undulationDefinitions, undulationReadings } from './undulation';
import { underwaterDistanceDefinitions, underwaterDistanceReadings } from './underwater-distance';
import { waveComponentDefinitions, waveComponentReadings } from './wave-components';

/** One family of landmark readings: what it defines and how it reads a swim. Every definition yields one reading. */
export interface BodyFamily {
  readonly definitions: readonly ReadingDefinition[];
  readonly read: (context: BodyContext) => readonly Reading[];
}

/** All readings that landmarks give, in the order of the catalogue. */
export const bodyFamilies: readonly BodyFamily[] = [
  { definitions: kickAmplitudeDefinitions, read: kickAmplitudeReadings },
  { definitions: footSpeedDefinitions, read: footSpeedReadings },
  { definitions: undulationDefinitions, read: undulationReadings },
  { definitions: waveComponentDefinitions, read: waveComponentReadings },
  { definitions: bodyWaveDefinitions, read: bodyWaveReadings },
  { definitions: postureDefinitions, read: postureReadings },
  { definitions: speedDefinitions, read: speedReadings },
  { definitions: underwaterDistanceDefinitions, read: underwaterDistanceReadings },
];
