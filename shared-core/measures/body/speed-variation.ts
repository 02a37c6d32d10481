import { extremeLift, waveExtremes } from '../../signal/wave-extremes';
import { missingReading, computedReading, unitPart } from './measured-reading';
import { z95 } from '../../uncertainty/normal-quantile';
import type { Reading, ReadingNote } from '../reading';
import type { BodyContext } from './body-context';
import { type LandmarkWave, waveNotes } from './landmark-wave';
import { bestSpeed, cameraVariance, speedNotes, speedUnit } from './trace-speed';

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
  const swing = swingVariance(wave, noise);
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
  const value = percent * Math.sqrt(Math.max(0, swing.value));
  const mean = (value ** 2 * speed.variance) / speed.value ** 2;
  const edge = (side: 1 | -1): number =>
    percent * Math.sqrt(Math.max(0, swing.value + side * z95 * Math.sqrt(swing.variance)));
  const stretch = z95 * Math.sqrt(mean);
  const low = Math.max(0, value - Math.hypot(value - edge(-1), stretch));
  const high = value + Math.hypot(edge(1) - value, stretch);
  const variation = computedReading(context, 'speed-variation', {
    ...common,
    value,
    unit: '%',
    ownVariance: ((high - low) / (2 * z95)) ** 2,
    bounds: { low, high },
  });
  return [variation, ...extremes];
}

/** Variance over time of the fitted speed within the cycle, noise power taken off, and its own error. */
function swingVariance(wave: LandmarkWave, noise: number): { value: number; variance: number } {
  const fit = wave.pooled;
  const p = fit.coefficients.length;
  let value = 0;
  let floor = 0;
  // the observed coefficients hold their own noise, which the linear part would count once too often
  let doubled = 0;
  const slope = new Float64Array(p);
  for (let k = 1; k <= fit.harmonics; k++) {
    const square = (k * fit.angularFrequency) ** 2;
    for (const i of [2 * k, 2 * k + 1]) {
      const c = fit.coefficients[i] ?? 0;
      const v = noise * (fit.unitCovariance[i * p + i] ?? 0);
      value += (square / 2) * (c * c - v);
      floor += (square ** 2 / 2) * v * v;
      doubled += square ** 2 * v * v;
      slope[i] = square * c;
    }
  }
  let linear = 0;
  for (let a = 2; a < p; a++) {
    for (let b = 2; b < p; b++) {
      linear += (slope[a] ?? 0) * (slope[b] ?? 0) * (fit.unitCovariance[a * p + b] ?? 0);
    }
  }
  return { value, variance: Math.max(0, noise * linear - doubled) + floor };
}
