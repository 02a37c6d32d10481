import { extremeLift, waveExtreme } from '../../../signal/wave-extremes';
import type { Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { type LandmarkWave, landmarkWave, waveNotes } from '../wave/landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import type { CycleValue } from '../reading/measured';
import { z95 } from '../../../uncertainty/normal-quantile';
import { waveNotSeen } from '../context/side-view';
import { bestSpeed, speedNotes, speedUnit } from './trace-speed';
import { notForward } from '../context/other-way';
import { slightLift } from '../wave/undulation';
import { speedReadingsWords } from '../../../words/speed-readings';

const ids = ['foot-speed-down', 'foot-speed-up', 'foot-speed-ratio', 'foot-speed-over-swim'] as const;

interface Peak {
  readonly value: number;
  readonly variance: number;
  readonly perCycle: readonly CycleValue[];
}

/**
 * Fastest downward (sign −1) or upward speed of the toes: of each cycle's fit where noise hardly lifts those, else of the
 * common one; noise lift taken off. Null when the movement drowns in marking error.
 */
function peakSpeed(wave: LandmarkWave, sign: 1 | -1): Peak | null {
  const noise = wave.sd ** 2;
  const one = (fit: LandmarkWave['pooled']): (Peak & { readonly lift: number }) | null => {
    const extreme = waveExtreme(fit, sign, 1);
    if (!extreme) return null;
    const lift = extremeLift(extreme, wave.liftVariance);
    const value = sign * extreme.value - lift;
    // the lift goes with the square of one normal error, whose variance is twice the square of its mean
    const variance = noise * extreme.unitVariance + 2 * lift ** 2;
    return lift <= value / 2 ? { value, variance, lift, perCycle: [] } : null;
  };
  const own = wave.perCycle.flatMap(({ fit, span }) => {
    const peak = one(fit);
    if (!peak || !(peak.lift < slightLift * peak.value)) return [];
    // where the tempo drifts the fit runs by an even clock, and the feet by their own
    const pace = (wave.clock(span.end) - wave.clock(span.start)) / (span.end - span.start);
    return [{ span, peak: { ...peak, value: pace * peak.value, variance: pace ** 2 * peak.variance } }];
  });
  const n = own.length;
  if (n === 0 || n < wave.perCycle.length) return one(wave.pooled);
  return {
    value: own.reduce((sum, { peak }) => sum + peak.value, 0) / n,
    variance: own.reduce((sum, { peak }) => sum + peak.variance, 0) / (n * n),
    perCycle: own.map(({ span, peak }) => ({
      value: peak.value,
      fromFrame: span.fromFrame,
      toFrame: span.toFrame,
    })),
  };
}

/** Peak speeds of the toes down and up, their ratio, and the down-kick against swimming speed. */
export function footSpeedReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  if (view) return ids.map((id) => missingReading(id, view));
  const trace = context.trace('toe');
  const result = landmarkWave(context, 'toe', trace, trace.y);
  if (!result.ok) return ids.map((id) => missingReading(id, ...result.reasons));
  const { wave } = result;
  const down = peakSpeed(wave, -1);
  const up = peakSpeed(wave, 1);
  if (!down || !up || wave.pooled.harmonics < wave.frame.kickHarmonic + 1) {
    return ids.map((id) => missingReading(id, { code: 'needs-denser-trace', landmark: 'toe' }));
  }
  const common = {
    cycles: wave.frame.spans.length,
    frames: wave.frames,
    landmarks: ['toe'] as const,
    eventIds: wave.frame.eventIds,
    instants: true,
    usesLevel: true,
    notes: waveNotes(wave),
  };
  const speeds = [down, up].map((peak, i) => {
    const part = unitPart(context, peak.value);
    return computedReading(context, ids[i] ?? ids[0], {
      ...common,
      value: peak.value,
      unit: speedUnit(context),
      ownVariance: peak.variance + part.own,
      sharedVariance: part.shared,
      perCycle: peak.perCycle,
    });
  });
  const ratio = down.value / up.value;
  const split = computedReading(context, ids[2], {
    ...common,
    value: ratio,
    unit: 'ratio',
    ownVariance: ratio ** 2 * (down.variance / down.value ** 2 + up.variance / up.value ** 2),
  });
  const swim = bestSpeed(context);
  if (!swim.ok) return [...speeds, split, missingReading(ids[3], ...swim.reasons)];
  const { speed } = swim;
  if (!(speed.value > z95 * Math.sqrt(speed.variance))) {
    return [...speeds, split, missingReading(ids[3], notForward(context))];
  }
  const over = down.value / speed.value;
  return [
    ...speeds,
    split,
    computedReading(context, ids[3], {
      ...common,
      value: over,
      unit: 'ratio',
      ownVariance: over ** 2 * (down.variance / down.value ** 2 + speed.variance / speed.value ** 2),
      landmarks: ['toe', ...speed.landmarks],
      usesTravel: true,
      notes: [...common.notes, ...speedNotes(context, speed)],
    }),
  ];
}

const source = speedReadingsWords('commonPracticeNo');

export const footSpeedDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'foot-speed-down',
    group: 'kick',
    label: speedReadingsWords('peakFootSpeed'),
    brief: speedReadingsWords('fastestDownwardSpeed'),
    definition: speedReadingsWords('fastestDownwardSpeedToes'),
    forCoach: speedReadingsWords('howHardFeetGo'),
    forSwimmer: speedReadingsWords('howFastYourFeet'),
    source,
    digits: 2,
  },
  {
    id: 'foot-speed-up',
    group: 'kick',
    label: speedReadingsWords('peakFootSpeedUp'),
    brief: speedReadingsWords('fastestUpwardSpeed'),
    definition: speedReadingsWords('fastestUpwardSpeedToes'),
    forCoach: speedReadingsWords('howHardFeetCome'),
    forSwimmer: speedReadingsWords('howFastYourFeetCome'),
    source,
    digits: 2,
  },
  {
    id: 'foot-speed-ratio',
    group: 'kick',
    label: speedReadingsWords('footSpeedDown'),
    brief: speedReadingsWords('peakDownPeak'),
    definition: speedReadingsWords('peakDownwardOver'),
    forCoach: speedReadingsWords('whetherKickWorks'),
    forSwimmer: speedReadingsWords('whetherYouKick'),
    source,
    digits: 2,
  },
  {
    id: 'foot-speed-over-swim',
    group: 'kick',
    label: speedReadingsWords('downKickOver'),
    brief: speedReadingsWords('peakFootSpeedDown'),
    definition: speedReadingsWords('peakDownwardSpeed'),
    forCoach: speedReadingsWords('below1FeetGo'),
    forSwimmer: speedReadingsWords('whetherYourFeet'),
    source,
    digits: 2,
  },
];
