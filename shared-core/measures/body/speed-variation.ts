import { fitDesign } from '../../signal/fit-wave';
import { type PowerEstimate, powerInterval } from '../../signal/power-interval';
import { extremeLift, waveExtremes } from '../../signal/wave-extremes';
import { z95 } from '../../uncertainty/normal-quantile';
import type { Reading, ReadingNote } from '../reading';
import type { BodyContext } from './body-context';
import { centreOfMassTrace } from './centre-of-mass';
import { fitInDoubtOfPeriod } from './fit-in-doubt-of-period';
import { type LandmarkWave, waveNotes } from './landmark-wave';
import { computedReading, missingReading, unitPart } from './measured-reading';
import { bestSpeed, cameraVariance, speedNotes, speedUnit, type TraceSpeed } from './trace-speed';

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
  const noise = wave.sd ** 2;
  const common = {
    cycles: speed.cycles,
    frames: speed.frames,
    landmarks: speed.landmarks,
    eventIds: speed.eventIds,
    usesLevel: true,
    usesTravel: true,
    notes: [...waveNotes(wave), ...speedNotes(context, speed)] satisfies readonly ReadingNote[],
  };
  const found = waveExtremes(wave.pooled, 1, true);
  const extremes = ([-1, 1] as const).map((sign): Reading => {
    const id = sign < 0 ? 'speed-lowest' : 'speed-highest';
    const extreme = sign < 0 ? found?.lowest : found?.highest;
    if (!extreme) return missingReading(id, { code: 'needs-denser-trace', landmark: 'hip' });
    const lift = extremeLift(extreme, wave.liftVariance);
    // a swing that noise could have made by itself is none
    if (!(lift <= Math.abs(extreme.value - speed.value) / 8)) {
      return missingReading(id, { code: 'needs-denser-trace', landmark: 'hip' });
    }
    const value = extreme.value - sign * lift;
    const part = unitPart(context, value);
    return computedReading(context, id, {
      ...common,
      value,
      unit: speedUnit(context),
      ownVariance: noise * extreme.unitVariance + part.own + cameraVariance(context, speed.frames),
      sharedVariance: part.shared,
    });
  });
  // slower than twice its own error is not known to move
  if (!(speed.value > z95 * Math.sqrt(speed.variance))) {
    return [missingReading('speed-variation', { code: 'degenerate', what: 'zero-speed' }), ...extremes];
  }
  const percent = 100 / speed.value;
  const power = swing(context, speed, wave);
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
function swing(context: BodyContext, { of }: Pick<TraceSpeed, 'of'>, wave: LandmarkWave): PowerEstimate {
  const fit = fitInDoubtOfPeriod(wave);
  const p = fit.coefficients.length;
  const heights = heightsAlike(context, of, wave);
  const tilt = context.tiltVariance;
  const swings = p - 2;
  const covariance = new Float64Array(swings * swings);
  for (let a = 0; a < swings; a++)
    for (let b = 0; b < swings; b++)
      covariance[a * swings + b] =
        wave.sd ** 2 * (fit.unitCovariance[(a + 2) * p + b + 2] ?? 0) +
        // a level line that is a little off takes a share of rise and fall for surge
        tilt * (heights[a + 2] ?? 0) * (heights[b + 2] ?? 0);
  const weights = Array.from(
    { length: swings },
    (_, i) => ((Math.floor(i / 2) + 1) * fit.angularFrequency) ** 2 / 2,
  );
  return powerInterval([...fit.coefficients.subarray(2)], weights, covariance);
}

/** Coefficients of the rise and fall of what the speed is of, by the fit its surge was read with. */
function heightsAlike(context: BodyContext, of: TraceSpeed['of'], wave: LandmarkWave): Float64Array {
  const trace = of === 'hip' ? context.trace('hip') : centreOfMassTrace(context);
  return fitDesign(wave.pooledDesign, trace.y, trace.frames.indexOf(wave.frames[0] ?? -1)).coefficients;
}
