import type { BodyContext } from '../body/context/body-context';
import { bodyWave, bodyWaveLandmarks } from '../body/wave/body-wave-speed';
import { kickAmplitude } from '../body/wave/kick-amplitude';
import { computedReading, missingReading, unitPart } from '../body/reading/measured-reading';
import { z95 } from '../../uncertainty/normal-quantile';
import { mergedFrames } from '../body/points/merged-frames';
import { waveNotSeen } from '../body/context/side-view';
import { bestSpeed, speedNotes } from '../body/speed/trace-speed';
import { type KickPeriod, kickPeriod } from '../events/kick-period';
import type { Reading, ReadingDefinition } from '../reading';
import { swimSpeed } from './swim-speed';
import { propulsionReadingsWords } from '../../words/propulsion-readings';

/**
 * Strouhal number f·A/U: kick frequency (Hz), peak-to-peak amplitude and speed in one length unit. U not zero.
 *
 * @see Wądrzyk, Nosiadek, Staszkiewicz 2017, Human Movement 18(4)
 */
export function strouhalNumber(frequency: number, amplitude: number, speed: number): number {
  return (frequency * amplitude) / speed;
}

/**
 * Froude efficiency of a slender body, (c + U) / 2c: body-wave speed c and swimming speed U in one unit, 0 < U ≤ c;
 * between 0.5 and 1.
 *
 * @see Zamparo et al. 2002, J Exp Biol 205:2665–2676
 */
export function froudeEfficiency(speed: number, waveSpeed: number): number {
  return (waveSpeed + speed) / (2 * waveSpeed);
}

/** Distance per kick, Strouhal number and Froude efficiency, where speed, amplitude and body wave are there. */
export function propulsionReadings(context: BodyContext): readonly Reading[] {
  const kick = kickPeriod(context);
  return [distancePerKick(context, kick), strouhal(context, kick), froude(context)];
}

function distancePerKick(context: BodyContext, kick: KickPeriod | null): Reading {
  const id = 'distance-per-kick';
  const contradiction = context.cycles?.contradiction;
  if (contradiction) return missingReading(id, contradiction);
  const result = swimSpeed(context);
  if (!result.ok) return missingReading(id, ...result.reasons);
  if (!kick) return missingReading(id, { code: 'needs-reading', reading: 'kick-frequency' });
  const { speed } = result;
  const value = speed.value * kick.seconds;
  return computedReading(context, id, {
    value,
    unit: speed.unit,
    ownVariance: (speed.own + kick.variance / kick.seconds ** 2) * value ** 2,
    sharedVariance: speed.shared * value ** 2,
    cycles: kick.cycles,
    frames: speed.frames,
    landmarks: speed.landmarks,
    eventIds: [...new Set([...speed.eventIds, ...kick.eventIds])],
    usesScale: speed.usesScale,
    notes: speed.notes,
  });
}

/** Speed in the same picture units as amplitude and wave, so that the scale cancels; else metres between marks. */
function speedBeside(context: BodyContext) {
  const traced = bestSpeed(context);
  if (traced.ok && traced.speed.value > 0) {
    const { value, variance, frames, landmarks, eventIds } = traced.speed;
    const notes = speedNotes(context, traced.speed);
    return {
      value,
      own: variance / value ** 2,
      shared: 0,
      frames,
      landmarks,
      eventIds,
      notes,
      reasons: null,
    };
  }
  const marked = swimSpeed(context);
  if (!marked.ok) return { reasons: marked.reasons };
  if (context.unit !== 'm') return { reasons: [{ code: 'needs-scene', item: 'scale' } as const] };
  const part = unitPart(context, 1);
  return { ...marked.speed, own: marked.speed.own + part.own, shared: part.shared, reasons: null };
}

function strouhal(context: BodyContext, kick: KickPeriod | null): Reading {
  const id = 'strouhal';
  const view = waveNotSeen(context);
  if (view) return missingReading(id, view);
  const contradiction = context.cycles?.contradiction;
  if (contradiction) return missingReading(id, contradiction);
  const heights = kickAmplitude(context);
  if (!kick) return missingReading(id, { code: 'needs-reading', reading: 'kick-frequency' });
  if (!heights || !(heights.value > 0))
    return missingReading(id, { code: 'needs-reading', reading: 'kick-amplitude-toe' });
  const speed = speedBeside(context);
  if (speed.reasons) return missingReading(id, ...speed.reasons);
  const value = strouhalNumber(1 / kick.seconds, heights.value, speed.value);
  const own = heights.variance / heights.value ** 2 + speed.own + kick.variance / kick.seconds ** 2;
  return computedReading(context, id, {
    value,
    unit: 'ratio',
    ownVariance: own * value ** 2,
    sharedVariance: speed.shared * value ** 2,
    cycles: heights.kicks,
    frames: mergedFrames(heights.frames, speed.frames),
    landmarks: ['toe', ...speed.landmarks],
    eventIds: [...new Set([...kick.eventIds, ...heights.eventIds, ...speed.eventIds])],
    usesLevel: true,
    usesTravel: true,
    notes: speed.notes,
  });
}

function froude(context: BodyContext): Reading {
  const id = 'froude';
  const view = waveNotSeen(context);
  if (view) return missingReading(id, view);
  const result = bodyWave(context);
  if (!result.ok) return missingReading(id, ...result.reasons);
  const { wave } = result;
  if (!(wave.slope - z95 * Math.sqrt(wave.slopeVariance) > 0))
    return missingReading(id, { code: 'needs-reading', reading: 'body-wave-speed' });
  const speed = speedBeside(context);
  if (speed.reasons) return missingReading(id, ...speed.reasons);
  const waveSpeed = wave.angularFrequency / wave.slope;
  const share = speed.value / waveSpeed;
  if (share > 1) return missingReading(id, { code: 'degenerate', what: 'speed-above-wave' });
  const { swimmerSlope } = wave;
  const speedPart = (share / 2) * Math.sqrt(speed.own + speed.shared + wave.frequencyVariance);
  const efficiencyAt = (slope: number): number =>
    froudeEfficiency(speed.value, wave.angularFrequency / slope);
  const relative = wave.slopeVariance / wave.slope ** 2 + wave.frequencyVariance + speed.own;
  return computedReading(context, id, {
    value: efficiencyAt(wave.slope),
    unit: 'ratio',
    // the mean speed is one for all cycles: what differs from cycle to cycle is the wave
    swimmerBounds: swimmerSlope && {
      low:
        efficiencyAt(wave.slope) -
        Math.hypot(efficiencyAt(wave.slope) - efficiencyAt(swimmerSlope.low), z95 * speedPart),
      high:
        efficiencyAt(wave.slope) +
        Math.hypot(efficiencyAt(swimmerSlope.high) - efficiencyAt(wave.slope), z95 * speedPart),
    },
    ownVariance: (share ** 2 * relative) / 4,
    sharedVariance: (share ** 2 * speed.shared) / 4,
    cycles: wave.cycles,
    frames: mergedFrames(wave.frames, speed.frames),
    landmarks: [...bodyWaveLandmarks, ...speed.landmarks],
    eventIds: [...new Set([...wave.eventIds, ...speed.eventIds])],
    usesLevel: true,
    usesTravel: true,
    notes: speed.notes,
  });
}

export const propulsionDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'distance-per-kick',
    group: 'kick',
    label: propulsionReadingsWords('distancePerKick'),
    brief: propulsionReadingsWords('speedKickFrequency'),
    definition: propulsionReadingsWords('meanSpeedTimes'),
    forCoach: propulsionReadingsWords('howFarOneKick'),
    forSwimmer: propulsionReadingsWords('howFarOneKickCarries'),
    source: propulsionReadingsWords('dUFZamparoEt'),
    digits: 2,
  },
  {
    id: 'strouhal',
    group: 'kick',
    label: propulsionReadingsWords('strouhalNumber'),
    brief: propulsionReadingsWords('kickFrequencyAmplitude'),
    definition: propulsionReadingsWords('kickFrequencyTimes'),
    forCoach: propulsionReadingsWords('howMuchKicking'),
    forSwimmer: propulsionReadingsWords('howMuchKickYou'),
    source: propulsionReadingsWords('wDrzykNosiadek'),
    digits: 2,
  },
  {
    id: 'froude',
    group: 'kick',
    label: propulsionReadingsWords('froudeEfficiency'),
    brief: propulsionReadingsWords('waveSpeedSpeed'),
    definition: propulsionReadingsWords('shareKicksUseful'),
    forCoach: propulsionReadingsWords('howWellBodyWave'),
    forSwimmer: propulsionReadingsWords('howMuchYourWave'),
    source: propulsionReadingsWords('zamparoEtAl2002'),
    digits: 2,
  },
];
