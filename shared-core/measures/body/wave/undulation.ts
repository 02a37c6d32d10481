import { pluralWords } from '../../../marks/mark-words';
import { bodyChain, type LandmarkName, landmarkNames } from '../../../marks/landmark';
import { swingCovariance, swingInterval } from '../../../signal/swing-interval';
import { waveExtremes, wavePeakToPeak } from '../../../signal/wave-extremes';
import { z95 } from '../../../uncertainty/normal-quantile';
import { studentWidening } from '../../../uncertainty/student-quantile';
import type { Reading, ReadingDefinition, ReadingNote } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { centreOfMassNotes, centreOfMassTrace } from '../context/centre-of-mass';
import { fitInDoubtOfPeriod } from './fit-in-doubt-of-period';
import { type LandmarkWave, landmarkWave, waveNotes, type WaveResult } from './landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import type { CycleValue, Measured } from '../reading/measured';
import { readingFreedom } from '../reading/reading-freedom';
import { mergedFrames } from '../points/merged-frames';
import { waveNotSeen } from '../context/side-view';
import { waveReadingsWords } from '../../../words/wave-readings';

export interface PeakToPeak {
  readonly value: number;
  /** From the marks alone, unit². */
  readonly variance: number;
  readonly perCycle: readonly CycleValue[];
  /** 95 % bounds from the marks alone, allowing for a marking error that was itself estimated; left out: value ± something. */
  readonly bounds?: { readonly low: number; readonly high: number };
}

/**
 * Share of an amplitude or a peak speed up to which noise may lift each cycle's own fit: the correction is second order and its own
 * error does not average out over cycles. Above it the common fit, with less noise in it, is read. Our default.
 */
export const slightLift = 0.02;

/**
 * Mean peak-to-peak of a landmark's wave: of each cycle's own fit when noise hardly lifts those, noise lift taken off; else of
 * the common one, as the swing by which what was seen is as likely from above as from below. Null of a wave that is none.
 *
 * @param wider by how much the noise is to be taken larger for the bounds, where it was itself estimated
 */
export function meanPeakToPeak(wave: LandmarkWave, wider = 1): PeakToPeak | null {
  const sampleVariance = wave.sd ** 2;
  const common = waveExtremes(wave.pooled, 0);
  const size = common ? common.highest.value - common.lowest.value : 0;
  const own = wave.perCycle.map(({ span, fit }) => ({
    span,
    estimate: wavePeakToPeak(fit, sampleVariance, wave.liftVariance, common),
  }));
  // asked of the common wave: cycles that noise made large would choose themselves
  const slight = own.every(({ estimate }) => estimate && estimate.lift < slightLift * size);
  if (own.length > 0 && slight) {
    const perCycle = own.flatMap(({ span, estimate }) =>
      estimate ? [{ value: estimate.value, fromFrame: span.fromFrame, toFrame: span.toFrame }] : [],
    );
    const n = perCycle.length;
    return {
      value: perCycle.reduce((sum, c) => sum + c.value, 0) / n,
      variance: own.reduce((sum, c) => sum + (c.estimate?.variance ?? 0), 0) / (n * n),
      perCycle,
    };
  }
  const { pooled, sd, liftVariance } = wave;
  const covariance = swingCovariance(fitInDoubtOfPeriod(wave), sampleVariance);
  const swing = swingInterval(pooled, covariance, 0, 'range', {
    wider,
    quieter: sd > 0 ? Math.sqrt(liftVariance) / sd : 1,
  });
  // a point held still by more than marking allows has no wave
  if (!swing || swing.noiseShowsMore === 1) return null;
  return {
    value: swing.value,
    variance: ((swing.high - swing.low) / (2 * wider * z95)) ** 2,
    perCycle: [],
    bounds: { low: swing.low, high: swing.high },
  };
}

/** Undulation amplitude of every landmark, and of the centre of mass: absolute and as a share of body length. */
export function undulationReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  return [...landmarkNames, 'centre-of-mass' as const].flatMap((name): Reading[] => {
    const id = `undulation-${name}`;
    const relativeId = `undulation-relative-${name}`;
    if (view) return [missingReading(id, view), missingReading(relativeId, view)];
    const result = waveOf(context, name);
    if (!result.ok) {
      return [missingReading(id, ...result.reasons), missingReading(relativeId, ...result.reasons)];
    }
    const { wave } = result;
    const landmarks = name === 'centre-of-mass' ? landmarkNames : [name];
    const found = meanPeakToPeak(wave, widerFor(context, wave, landmarks));
    if (!found) {
      const reason = {
        code: 'needs-denser-trace',
        landmark: name === 'centre-of-mass' ? 'hip' : name,
      } as const;
      return [missingReading(id, reason), missingReading(relativeId, reason)];
    }
    const common = {
      cycles: wave.frame.spans.length,
      frames: wave.frames,
      landmarks,
      eventIds: wave.frame.eventIds,
      usesLevel: true,
      notes: [
        ...waveNotes(wave),
        ...(name === 'centre-of-mass' ? centreOfMassNotes(context) : []),
        ...(wave.perCycle.length === 0 && wave.frame.spans.length > 1 ? (['sparse-trace'] as const) : []),
      ],
    };
    const part = unitPart(context, found.value);
    const absolute = computedReading(context, id, {
      ...common,
      value: found.value,
      unit: context.unit,
      ownVariance: found.variance + part.own,
      sharedVariance: part.shared,
      perCycle: found.perCycle,
      ...boundsWith(found, 1, part.own + part.shared),
    });
    if (!context.bodyLength) return [absolute, missingReading(relativeId, { code: 'needs-body-length' })];
    return [absolute, relativeReading(context, relativeId, found, common)];
  });
}

/** By how much the noise of a wave's landmarks is to be taken larger where the coach's marking error was measured. */
export function widerFor(
  context: BodyContext,
  wave: LandmarkWave,
  landmarks: readonly LandmarkName[],
): number {
  const one = { value: 1, unit: 'ratio', ownVariance: 1, cycles: 0, frames: wave.frames, landmarks } as const;
  return studentWidening(readingFreedom(context, one));
}

/** Bounds of an amplitude times `factor`, with what its unit may be off by; nothing where it is value ± something. */
export function boundsWith(
  { value, bounds }: PeakToPeak,
  factor: number,
  unitVariance: number,
): Pick<Measured, 'bounds' | 'widened'> {
  if (!bounds) return {};
  const extra = z95 * Math.sqrt(unitVariance);
  return {
    bounds: {
      low: Math.max(0, factor * value - Math.hypot(factor * (value - bounds.low), extra)),
      high: factor * value + Math.hypot(factor * (bounds.high - value), extra),
    },
    widened: true,
  };
}

/** An amplitude as a share of body length: both in pixels of one picture, so the scale drops out. */
export function relativeReading(
  context: BodyContext,
  id: string,
  found: PeakToPeak,
  common: {
    readonly cycles: number;
    readonly frames: readonly number[];
    readonly landmarks: readonly LandmarkName[];
    readonly eventIds: readonly string[];
    readonly usesLevel: boolean;
    readonly notes: readonly ReadingNote[];
    readonly sharing?: number;
    readonly independent?: readonly number[] | null;
  },
): Reading {
  const length = context.bodyLength;
  if (!length) return missingReading(id, { code: 'needs-body-length' });
  const perL = 1 / (length.pixels * context.transform.perPixel);
  const value = found.value * perL;
  const ofLength = (value ** 2 * length.variance) / length.pixels ** 2;
  return computedReading(context, id, {
    ...common,
    value,
    unit: 'L',
    ownVariance: found.variance * perL ** 2 + ofLength,
    ...boundsWith(found, perL, ofLength),
    perCycle: found.perCycle.map((c) => ({ ...c, value: c.value * perL })),
    independent: common.independent?.map((value) => value * perL) ?? null,
    frames: mergedFrames(common.frames, length.frames),
    landmarks:
      length.from === 'recorded' ? common.landmarks : [...new Set([...common.landmarks, ...bodyChain])],
    usesScale: length.from === 'recorded',
  });
}

function waveOf(context: BodyContext, name: LandmarkName | 'centre-of-mass'): WaveResult {
  if (name !== 'centre-of-mass') {
    const trace = context.trace(name);
    return landmarkWave(context, name, trace, trace.y);
  }
  const trace = centreOfMassTrace(context);
  return landmarkWave(context, 'hip', trace, trace.y);
}

const source = waveReadingsWords('sandersCappaertDevlin');

export const undulationDefinitions: readonly ReadingDefinition[] = [
  ...landmarkNames.map((name) => ({ name, word: pluralWords[name] })),
  { name: 'centre-of-mass', word: waveReadingsWords('centreMass') },
].flatMap(({ name, word }) => [
  {
    id: `undulation-${name}`,
    group: 'body-wave' as const,
    label: waveReadingsWords('undulation', { word }),
    brief: waveReadingsWords('peakPeakHeight'),
    definition: waveReadingsWords('highestMinusLowest', { word }),
    forCoach: waveReadingsWords('howMuchRiseFall', { word }),
    forSwimmer: waveReadingsWords('howFarYourMove', { word }),
    source,
    digits: 3,
  },
  {
    id: `undulation-relative-${name}`,
    group: 'body-wave' as const,
    label: waveReadingsWords('undulationBodyLength', { word }),
    brief: waveReadingsWords('peakPeakHeightBody'),
    definition: waveReadingsWords('undulationDividedBody', { word }),
    forCoach: waveReadingsWords('sameMadeFair'),
    forSwimmer: waveReadingsWords('howFarYourMoveUp', { word }),
    source: waveReadingsWords('bodyLengthVon', { source }),
    digits: 3,
  },
]);
