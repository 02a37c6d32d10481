import { fitDesign } from '../../../signal/fit-wave';
import { type PowerEstimate, powerInterval } from '../../../signal/power-interval';
import { swingInterval } from '../../../signal/swing-interval';
import { studentWidening } from '../../../uncertainty/student-quantile';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { Reading, ReadingDefinition, ReadingNote } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { centreOfMassTrace } from '../context/centre-of-mass';
import { fitInDoubtOfPeriod } from '../wave/fit-in-doubt-of-period';
import { type LandmarkWave, waveNotes } from '../wave/landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { notForward } from '../context/other-way';
import { readingFreedom } from '../reading/reading-freedom';
import { speedReadingsWords } from '../../../words/speed-readings';
import { bestSpeed, speedNotes, speedUnit, type TraceSpeed } from './trace-speed';

/** How speed swings within the cycle: its variation, its lowest and its highest value. */
export function speedVariationReadings(context: BodyContext): readonly Reading[] {
  const ids = ['speed-variation', 'speed-lowest', 'speed-highest'] as const;
  const result = bestSpeed(context);
  if (!result.ok) return ids.map((id) => missingReading(id, ...result.reasons));
  const { speed } = result;
  const { wave } = speed;
  // one harmonic of the kick alone would call every swim's surge a plain sine
  if (!wave || wave.pooled.harmonics < wave.frame.kickHarmonic + 1) {
    return ids.map((id) => missingReading(id, { code: 'needs-denser-trace', landmark: 'hip' }));
  }
  const common = {
    cycles: speed.cycles,
    frames: speed.frames,
    landmarks: speed.landmarks,
    eventIds: speed.eventIds,
    usesLevel: true,
    usesTravel: true,
    notes: [...waveNotes(wave), ...speedNotes(context, speed)] satisfies readonly ReadingNote[],
  };
  const covariance = surgeCovariance(context, speed, wave);
  const wider = studentWidening(
    readingFreedom(context, { ...common, value: 1, unit: 'ratio', ownVariance: 1 }),
  );
  const extremes = ([-1, 1] as const).map((sign): Reading => {
    const id = sign < 0 ? 'speed-lowest' : 'speed-highest';
    const swing = swingInterval(wave.pooled, covariance, 1, sign < 0 ? 'lowest' : 'highest', {
      wider,
      // the other half of the chance is the mean's
      chanceAtNothing: 0.025,
    });
    if (!swing) return missingReading(id, { code: 'needs-denser-trace', landmark: 'hip' });
    const value = speed.value + sign * swing.value;
    const part = unitPart(context, value);
    // what the mean is off by, which the swing about it does not know
    const mean = wider * z95 * Math.sqrt(speed.variance + part.own + part.shared);
    const inward = swing.value - swing.low;
    // where there may be no swing at all its end stands fast, and what the mean is off by moves it as it is
    const toMean = swing.low > 0 ? Math.hypot(inward, mean) : inward + mean;
    const outward = Math.hypot(swing.high - swing.value, mean);
    const bounds =
      sign < 0
        ? { low: value - outward, high: value + toMean }
        : { low: value - toMean, high: value + outward };
    return computedReading(context, id, {
      ...common,
      value,
      unit: speedUnit(context),
      ownVariance: ((bounds.high - bounds.low) / (2 * z95)) ** 2 - part.shared,
      sharedVariance: part.shared,
      bounds,
      widened: true,
    });
  });
  // slower than twice its own error is not known to move
  if (!(speed.value > z95 * Math.sqrt(speed.variance))) {
    return [missingReading('speed-variation', notForward(context)), ...extremes];
  }
  const percent = 100 / speed.value;
  const power = swing(wave, covariance);
  const root = (of: number): number => percent * Math.sqrt(Math.max(0, of));
  const value = root(power.value);
  const stretch = (z95 * value * Math.sqrt(speed.variance)) / speed.value;
  const low = Math.max(0, value - Math.hypot(value - root(power.low), stretch));
  const high = value + Math.hypot(root(power.high) - value, stretch);
  const variation = computedReading(context, 'speed-variation', {
    ...common,
    value,
    unit: '%',
    ownVariance: ((high - low) / (2 * z95)) ** 2,
    bounds: { low, high },
  });
  return [variation, ...extremes];
}

/** Variance over time of the fitted speed within the cycle: 0 with an interval that ends above 0 where none is seen. */
function swing({ pooled }: LandmarkWave, covariance: Float64Array): PowerEstimate {
  const coefficients = [...pooled.coefficients.subarray(2)];
  const weights = coefficients.map((_, i) => ((Math.floor(i / 2) + 1) * pooled.angularFrequency) ** 2 / 2);
  return powerInterval(coefficients, weights, covariance);
}

/** Covariance of the coefficients of the surge along travel, offset and drift left aside. */
function surgeCovariance(
  context: BodyContext,
  { of }: Pick<TraceSpeed, 'of'>,
  wave: LandmarkWave,
): Float64Array {
  const fit = fitInDoubtOfPeriod(wave);
  const p = fit.coefficients.length;
  const heights = heightsAlike(context, of, wave);
  const tilt = context.tiltVariance;
  const swings = p - 2;
  const covariance = new Float64Array(swings * swings);
  for (let a = 0; a < swings; a++)
    for (let b = 0; b < swings; b++)
      covariance[a * swings + b] =
        wave.sd ** 2 * (fit.unitCovariance[(a + 2) * p + b + 2] as number) +
        // a level line that is a little off takes a share of rise and fall for surge
        tilt * (heights[a + 2] as number) * (heights[b + 2] as number);
  return covariance;
}

/** Coefficients of the rise and fall of what the speed is of, by the fit its surge was read with. */
function heightsAlike(context: BodyContext, of: TraceSpeed['of'], wave: LandmarkWave): Float64Array {
  const trace = of === 'hip' ? context.trace('hip') : centreOfMassTrace(context);
  return fitDesign(wave.pooledDesign, trace.y, trace.frames.indexOf(wave.frames[0] ?? -1)).coefficients;
}

export const speedVariationDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'speed-variation',
    group: 'speed',
    label: speedReadingsWords('speedVariationWithin'),
    brief: speedReadingsWords('n100SdSpeedMean'),
    definition: speedReadingsWords('standardDeviationFitted'),
    forCoach: speedReadingsWords('howEvenlySwimmer'),
    forSwimmer: speedReadingsWords('howEvenYourSpeed'),
    source: speedReadingsWords('intraCycleVelocity'),
    digits: 1,
  },
  {
    id: 'speed-lowest',
    group: 'speed',
    label: speedReadingsWords('lowestSpeedCycle'),
    brief: speedReadingsWords('slowestInstant'),
    definition: speedReadingsWords('lowestValueFitted'),
    forCoach: speedReadingsWords('howSlowSlowest'),
    forSwimmer: speedReadingsWords('yourSlowestMoment'),
    source: speedReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
  {
    id: 'speed-highest',
    group: 'speed',
    label: speedReadingsWords('highestSpeedCycle'),
    brief: speedReadingsWords('fastestInstant'),
    definition: speedReadingsWords('highestValueFitted'),
    forCoach: speedReadingsWords('howFastFastest'),
    forSwimmer: speedReadingsWords('yourFastestMoment'),
    source: speedReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
];
