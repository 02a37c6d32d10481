import type { LandmarkName } from '../../marks/landmark';
import { waveHarmonics } from '../../signal/wave-harmonics';
import type { MissingReason, Reading, ReadingDefinition } from '../reading';
import type { BodyContext } from './body-context';
import { type LandmarkWave, landmarkWave, waveNotes } from './landmark-wave';
import { computedReading, type Measured, missingReading, unitPart, z95 } from './measured-reading';
import { waveNotSeen } from './side-view';

const shown = ['hip', 'toe'] as const satisfies readonly LandmarkName[];
const orders = [1, 2, 3] as const;
const degree = 180 / Math.PI;

/** √χ²(0.95; 2): a fitted amplitude below this many standard deviations can't be told from none. */
const noneBelow = 2.448;

/**
 * A phase is told from this many standard deviations of its amplitude on: nearer to nothing, those that happen to be
 * seen at all are seen where the noise points. Our default; the coverage bench is what it was set by.
 */
const phaseFrom = 4.5;

interface Component {
  readonly power: number;
  readonly powerVariance: number;
  readonly sd: number;
  readonly phase: number;
  readonly phaseVariance: number;
}

/** Amplitude, phase and share of power of the first three harmonics of hip and toe. */
export function waveComponentReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  return shown.flatMap((landmark): Reading[] => {
    const ids = orders.flatMap((k) => [
      `harmonic-${k}-${landmark}`,
      `harmonic-phase-${k}-${landmark}`,
      `harmonic-share-${k}-${landmark}`,
    ]);
    if (view) return ids.map((id) => missingReading(id, view));
    const trace = context.trace(landmark);
    const result = landmarkWave(context, landmark, trace, trace.y);
    if (!result.ok) return ids.map((id) => missingReading(id, ...result.reasons));
    return readingsOf(context, landmark, result.wave);
  });
}

function readingsOf(context: BodyContext, landmark: LandmarkName, wave: LandmarkWave): Reading[] {
  const parts = components(context, wave);
  const common = {
    cycles: wave.frame.spans.length,
    frames: wave.frames,
    landmarks: [landmark],
    eventIds: wave.frame.eventIds,
    usesLevel: true,
    notes: waveNotes(wave),
  };
  const denser: MissingReason = { code: 'needs-denser-trace', landmark };
  const total = parts.reduce((sum, c) => sum + Math.max(0, c.power), 0);
  return orders.flatMap((k): Reading[] => {
    const part = parts[k - 1];
    const ids = [
      `harmonic-${k}-${landmark}`,
      `harmonic-phase-${k}-${landmark}`,
      `harmonic-share-${k}-${landmark}`,
    ] as const;
    if (!part) return ids.map((id) => missingReading(id, denser));
    const seen = Math.sqrt(Math.max(0, part.power)) > phaseFrom * part.sd;
    return [
      computedReading(context, ids[0], { ...common, ...amplitudeOf(context, part) }),
      seen
        ? computedReading(context, ids[1], {
            ...common,
            value: part.phase * degree,
            unit: '°',
            ownVariance: part.phaseVariance * degree ** 2,
          })
        : missingReading(ids[1], denser),
      parts.length > 1 && total > 0
        ? computedReading(context, ids[2], { ...common, ...shareOf(parts, k, total) })
        : missingReading(ids[2], denser),
    ];
  });
}

function amplitudeOf(
  context: BodyContext,
  part: Component,
): Pick<Measured, 'value' | 'unit' | 'ownVariance' | 'sharedVariance' | 'bounds'> {
  const value = Math.sqrt(Math.max(0, part.power));
  const unit = unitPart(context, value);
  const own = part.sd ** 2 + unit.own;
  const half = z95 * Math.sqrt(own + unit.shared);
  return {
    value,
    unit: context.unit,
    ownVariance: own,
    sharedVariance: unit.shared,
    bounds: {
      low: value <= noneBelow * part.sd ? 0 : Math.max(0, value - half),
      high: value + Math.max(half, noneBelow * part.sd),
    },
  };
}

function shareOf(
  parts: readonly Component[],
  k: number,
  total: number,
): Pick<Measured, 'value' | 'unit' | 'ownVariance' | 'bounds'> {
  const share = Math.max(0, parts[k - 1]?.power ?? 0) / total;
  let variance = 0;
  parts.forEach((other, i) => {
    const slope = ((i === k - 1 ? 1 : 0) - share) / total;
    // a power near nothing is spread by the square of the noise, of which the slope sees a part only
    variance += slope ** 2 * (other.powerVariance + 2 * other.sd ** 4);
  });
  const own = 100 ** 2 * variance;
  const value = 100 * share;
  const half = z95 * Math.sqrt(own);
  return {
    value,
    unit: '%',
    ownVariance: own,
    bounds: { low: Math.max(0, value - half), high: Math.min(100, value + half) },
  };
}

/** Harmonics of the common fit over all whole cycles; phases counted from the mean start of the cycles. */
function components(context: BodyContext, wave: LandmarkWave): readonly Component[] {
  const { spans } = wave.frame;
  const { period } = wave;
  const first = spans[0]?.start ?? 0;
  const late = spans.map((span) => span.start - first - period * Math.round((span.start - first) / period));
  const origin = first + late.reduce((sum, v) => sum + v, 0) / Math.max(1, spans.length);
  const varianceAt = new Map(context.events.map((e) => [e.time, e.variance]));
  const starts = spans.reduce((sum, span) => sum + (varianceAt.get(span.start) ?? 0), 0) / spans.length ** 2;
  return waveHarmonics(wave.pooled, wave.sd ** 2, origin)
    .slice(0, orders.length)
    .map((h) => ({
      power: h.power,
      powerVariance: h.powerVariance,
      sd: h.amplitudeSd,
      phase: h.phase,
      phaseVariance: h.phaseVariance + (h.k * wave.pooled.angularFrequency) ** 2 * starts,
    }));
}

const source =
  'Sanders, Cappaert, Devlin 1995, J Biomech 28:9–16; least squares at known frequency, on the true sample times';

export const waveComponentDefinitions: readonly ReadingDefinition[] = shown.flatMap((landmark) =>
  orders.flatMap((k): ReadingDefinition[] => {
    const word = landmark === 'hip' ? 'hips' : 'toes';
    const which = ['first', 'second', 'third'][k - 1] ?? '';
    return [
      {
        id: `harmonic-${k}-${landmark}`,
        group: 'body-wave',
        label: `Harmonic ${k} of the ${word}`,
        brief: 'half of peak-to-peak',
        definition: `Amplitude C${k} (half of peak-to-peak) of the ${which} harmonic of the height of the ${word}; the first goes once a cycle: a stroke where hand entries are marked, else a kick.`,
        forCoach:
          k === 1
            ? `The part of the ${word}' movement that goes once a cycle.`
            : `The part of the ${word}' movement that goes ${k} times a cycle.`,
        forSwimmer: `One of the waves that make up how your ${word} move.`,
        source,
        digits: 3,
      },
      {
        id: `harmonic-phase-${k}-${landmark}`,
        group: 'body-wave',
        label: `Phase ${k} of the ${word}`,
        brief: 'where its crest falls',
        definition: `Phase φ${k} of the ${which} harmonic of the height of the ${word}, degrees of that harmonic after the cycle begins (hand entry, or the kick's marked turn), in −180 to 180.`,
        forCoach: `When in the cycle this wave of the ${word} crests; compared along the body it shows the wave travelling.`,
        forSwimmer: `When your ${word} are at the crest of this wave.`,
        source,
        digits: 0,
      },
      {
        id: `harmonic-share-${k}-${landmark}`,
        group: 'body-wave',
        label: `Power share ${k} of the ${word}`,
        brief: 'C² / sum of C²',
        definition: `Share of the ${which} harmonic in the summed squares of the harmonics fitted (up to three) to the height of the ${word}.`,
        forCoach: `Whether the ${word} follow the stroke, the kick, or something else.`,
        forSwimmer: `How much of your ${word}' movement is this wave.`,
        source,
        digits: 1,
      },
    ];
  }),
);
