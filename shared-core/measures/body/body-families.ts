import type { EventKind } from '../../marks/event-kind';
import type { Reading, ReadingDefinition } from '../reading';
import type { BodyContext } from './context/body-context';
import { bodyWaveDefinitions, bodyWaveReadings } from './wave/body-wave-speed';
import { footSpeedDefinitions, footSpeedReadings } from './speed/foot-speed';
import { kickAmplitudeDefinitions, kickAmplitudeReadings } from './wave/kick-amplitude';
import { phaseLagDefinitions, phaseLagReadings } from './wave/phase-lag';
import { postureDefinitions, postureEvents, postureReadings } from './posture/posture';
import { speedDefinitions, speedReadings } from './speed/speed';
import { speedVariationDefinitions, speedVariationReadings } from './speed/speed-variation';
import { undulationDefinitions, undulationReadings } from './wave/undulation';
import { underwaterDistanceDefinitions, underwaterDistanceReadings } from './speed/underwater-distance';
import { waveComponentDefinitions, waveComponentReadings } from './wave/wave-components';

/** One family of landmark readings: what it defines and how it reads a swim. Every definition yields one reading. */
export interface BodyFamily {
  readonly definitions: readonly ReadingDefinition[];
  readonly read: (context: BodyContext) => readonly Reading[];
  /**
   * Kinds of event it reads beside points, scene and card. Where none of these moved its readings are kept; left out:
   * any event, and nothing is kept.
   */
  readonly looksAt?: readonly EventKind[];
}

/** Events that cycles and the kick's period are made of. */
const ofCycles = ['entry', 'kick-top', 'kick-bottom'] as const satisfies readonly EventKind[];

/** All readings that landmarks give, in the order of the catalogue. */
export const bodyFamilies: readonly BodyFamily[] = [
  { definitions: kickAmplitudeDefinitions, read: kickAmplitudeReadings, looksAt: ofCycles },
  { definitions: footSpeedDefinitions, read: footSpeedReadings, looksAt: ofCycles },
  { definitions: undulationDefinitions, read: undulationReadings, looksAt: ofCycles },
  { definitions: waveComponentDefinitions, read: waveComponentReadings, looksAt: ofCycles },
  { definitions: bodyWaveDefinitions, read: bodyWaveReadings, looksAt: ofCycles },
  { definitions: phaseLagDefinitions, read: phaseLagReadings, looksAt: ofCycles },
  { definitions: postureDefinitions, read: postureReadings, looksAt: postureEvents },
  { definitions: speedDefinitions, read: speedReadings, looksAt: ofCycles },
  { definitions: speedVariationDefinitions, read: speedVariationReadings, looksAt: ofCycles },
  {
    definitions: underwaterDistanceDefinitions,
    read: underwaterDistanceReadings,
    looksAt: ['push-off', 'breakout'],
  },
];
