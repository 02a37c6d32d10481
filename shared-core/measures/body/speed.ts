import { type LandmarkName, landmarkNames } from '../../marks/landmark';
import { fitLine } from '../../signal/fit-line';
import { extremeLift, waveExtreme } from '../../signal/wave-extremes';
import type { MissingReason, Reading, ReadingDefinition, ReadingNote, ReadingUnit } from '../reading';
import type { BodyContext } from './body-context';
import { centreOfMassTrace } from './centre-of-mass';
import type { CycleFrame } from './cycle-frame';
import { cyclesMissing, type LandmarkWave, landmarkWave, waveNotes } from './landmark-wave';
import type { LandmarkTrace } from './landmark-trace';
import { computedReading, missingReading, unitPart, z95 } from './measured-reading';
import { notFromSide } from './side-view';

export interface TraceSpeed {
  /** Pool units a second, positive along travel. */
  readonly value: number;
  /** From the marks alone. */
  readonly variance: number;
  readonly of: 'centre-of-mass' | 'hip';
  /** The fitted movement along travel; null when the postures are too sparse for more than a straight line. */
  readonly wave: LandmarkWave | null;
  readonly frames: readonly number[];
  readonly landmarks: readonly LandmarkName[];
  readonly cycles: number;
  readonly eventIds: readonly string[];
}

const landmarksOf = (of: TraceSpeed['of']): readonly LandmarkName[] =>
  of === 'hip' ? ['hip'] : landmarkNames;

export type SpeedResult =
  | { readonly ok: true; readonly speed: TraceSpeed }
  | { readonly ok: false; readonly reasons: readonly [MissingReason, ...MissingReason[]] };

/**
 * Harmonics of the kick fitted to the surge at most: speed magnifies noise with frequency, so fewer than for height.
 * Our default.
 */
const surgeMultiples = 2;

const kept = new WeakMap<CycleFrame, Partial<Record<TraceSpeed['of'], SpeedResult>>>();

/** Mean speed of the hip or the centre of mass along travel, over whole cycles. */
export function speedOf(context: BodyContext, of: TraceSpeed['of']): SpeedResult {
  const view = notFromSide(context);
  if (view) return { ok: false, reasons: [view] };
  if (!context.transform.travelKnown)
    return { ok: false, reasons: [{ code: 'needs-scene', item: 'travel' }] };
  const { cycles } = context;
  if (!cycles) return measureSpeed(context, of);
  const known = kept.get(cycles) ?? {};
  const result = known[of] ?? measureSpeed(context, of);
  kept.set(cycles, { ...known, [of]: result });
  return result;
}

/** Speed of the centre of mass where all landmarks carry it, else of the hip. */
export function bestSpeed(context: BodyContext): SpeedResult {
  const centre = speedOf(context, 'centre-of-mass');
  if (centre.ok && centre.speed.wave) return centre;
  const hip = speedOf(context, 'hip');
  return hip.ok ? hip : centre.ok ? centre : hip;
}

function measureSpeed(context: BodyContext, of: TraceSpeed['of']): SpeedResult {
  const missing = cyclesMissing(context);
  if (missing) return { ok: false, reasons: [missing] };
  const trace = of === 'hip' ? context.trace('hip') : centreOfMassTrace(context);
  const result = landmarkWave(context, 'hip', trace, trace.x, surgeMultiples);
  if (result.ok) {
    const { wave } = result;
    const p = wave.pooled.coefficients.length;
    return {
      ok: true,
      speed: {
        value: wave.pooled.coefficients[1] ?? 0,
        variance: wave.sd ** 2 * (wave.pooled.unitCovariance[p + 1] ?? 0),
        of,
        wave,
        frames: wave.frames,
        landmarks: landmarksOf(of),
        cycles: wave.frame.spans.length,
        eventIds: wave.frame.eventIds,
      },
    };
  }
  const sparse = sparseSpeed(context, trace);
  return sparse
    ? { ok: true, speed: { ...sparse, of, landmarks: landmarksOf(of) } }
    : { ok: false, reasons: result.reasons };
}

/** Straight line through the postures from the first cycle's start to the last one's end. */
function sparseSpeed(
  context: BodyContext,
  trace: LandmarkTrace,
): Omit<TraceSpeed, 'of' | 'landmarks'> | null {
  const frame = context.cycles;
  const first = frame?.spans[0];
  const last = frame?.spans.at(-1);
  if (!frame || !first || !last) return null;
  const inside = trace.times.flatMap((t, i) =>
    t >= first.start - 1e-9 && t <= last.end + 1e-9
      ? [{ t, x: trace.x[i] ?? 0, frame: trace.frames[i] ?? 0, weight: trace.followed?.slowWeights[i] ?? 1 }]
      : [],
  );
  const span = (inside.at(-1)?.t ?? 0) - (inside[0]?.t ?? 0);
  // less than a cycle between first and last posture would read the surge of a kick as speed
  if (span < 0.95 * frame.period) return null;
  const t = inside.map((p) => p.t);
  const x = inside.map((p) => p.x);
  const weights = inside.map((p) => p.weight);
  const line = fitLine(t, x, weights);
  if (!line) return null;
  const n = inside.length;
  const rest = inside.reduce((sum, p) => sum + p.weight * (p.x - line.intercept - line.slope * p.t) ** 2, 0);
  // the surge within cycles is not modelled here: where it shows in the residuals it counts as noise
  const noise = n > 3 ? Math.max(trace.sd ** 2, rest / (n - 2)) : trace.sd ** 2;
  return {
    value: line.slope,
    variance: line.slopeVariance * noise,
    wave: null,
    frames: inside.map((p) => p.frame),
    cycles: frame.spans.length,
    eventIds: frame.eventIds,
  };
}

export function speedUnit(context: BodyContext): ReadingUnit {
  return context.unit === 'm' ? 'm/s' : context.unit === 'L' ? 'L/s' : 'px/s';
}

/** Mean speed of hip and centre of mass, and how it swings within the cycle. */
export function speedReadings(context: BodyContext): readonly Reading[] {
  const means = (['hip', 'centre-of-mass'] as const).map((of): Reading => {
    const id = `speed-${of}`;
    const result = speedOf(context, of);
    if (!result.ok) return missingReading(id, ...result.reasons);
    const { speed } = result;
    const part = unitPart(context, speed.value);
    const notes: ReadingNote[] = of === 'hip' ? ['hip-not-centre-of-mass'] : [];
    if (!speed.wave) notes.push('sparse-trace');
    else notes.push(...waveNotes(speed.wave));
    if (of === 'centre-of-mass' && isChild(context)) notes.push('approximate-for-children');
    return computedReading(context, id, {
      value: speed.value,
      unit: speedUnit(context),
      ownVariance: speed.variance + part.own,
      sharedVariance: part.shared,
      cycles: speed.cycles,
      frames: speed.frames,
      landmarks: speed.landmarks,
      eventIds: speed.eventIds,
      usesLevel: true,
      usesTravel: true,
      notes,
    });
  });
  return [...means, ...variationReadings(context)];
}

/** Under 18 in the year of the swim: the body tables are of young adults. False when the birth year isn't known. */
function isChild(context: BodyContext): boolean {
  const born = context.input.swimmer?.birthYear;
  return typeof born === 'number' && Number(context.input.swim.card.date.slice(0, 4)) - born < 18;
}

function variationReadings(context: BodyContext): readonly Reading[] {
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
    notes: [
      ...waveNotes(wave),
      ...(speed.of === 'hip' ? (['hip-not-centre-of-mass'] as const) : []),
    ] as const satisfies readonly ReadingNote[],
  };
  const swing = swingVariance(wave, noise);
  const extremes = ([-1, 1] as const).map((sign): Reading => {
    const id = sign < 0 ? 'speed-lowest' : 'speed-highest';
    const extreme = waveExtreme(wave.pooled, sign, 1, true);
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
      ownVariance: noise * extreme.unitVariance + part.own,
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

export const speedDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'speed-hip',
    group: 'speed',
    label: 'Speed of the hips',
    brief: 'along travel, whole cycles',
    definition:
      'Slope of the hips’ way along travel over whole cycles, the surge within cycles fitted beside it. Fixed camera. The hip is not the centre of mass: within a cycle it swings more.',
    forCoach: 'How fast the swimmer went, on average over whole cycles.',
    forSwimmer: 'How fast you went.',
    source: 'Slope over whole cycles; hip against centre of mass in butterfly: Barbosa and others',
    digits: 2,
  },
  {
    id: 'speed-centre-of-mass',
    group: 'speed',
    label: 'Speed of the centre of mass',
    brief: 'along travel, whole cycles',
    definition:
      'The same for the whole-body centre of mass, from postures with all nine landmarks. Head taken at the ear, foot on the ankle–toe line.',
    forCoach: 'How fast the whole body went, on average over whole cycles.',
    forSwimmer: 'How fast your whole body went.',
    source: 'de Leva 1996, J Biomech 29:1223–1230, Table 4 (young adults)',
    digits: 2,
  },
  {
    id: 'speed-variation',
    group: 'speed',
    label: 'Speed variation within the cycle',
    brief: '100 · SD of speed / mean speed',
    definition:
      'Standard deviation of the fitted speed over the mean cycle, in % of mean speed; centre of mass where all landmarks are marked, else the hips.',
    forCoach: 'How evenly the swimmer moves; each slow spot has to be paid for by speeding up again.',
    forSwimmer: 'How even your speed is: smaller means smoother.',
    source: 'Intra-cycle velocity variation as used by the Barbosa group',
    digits: 1,
  },
  {
    id: 'speed-lowest',
    group: 'speed',
    label: 'Lowest speed in the cycle',
    brief: 'slowest instant',
    definition: 'Lowest value of the fitted speed over the mean cycle.',
    forCoach: 'How slow the slowest instant is; look at the frame it falls on.',
    forSwimmer: 'Your slowest moment in each cycle.',
    source: 'Our own definition',
    digits: 2,
  },
  {
    id: 'speed-highest',
    group: 'speed',
    label: 'Highest speed in the cycle',
    brief: 'fastest instant',
    definition: 'Highest value of the fitted speed over the mean cycle.',
    forCoach: 'How fast the fastest instant is; look at the frame it falls on.',
    forSwimmer: 'Your fastest moment in each cycle.',
    source: 'Our own definition',
    digits: 2,
  },
];
