import { keptWith } from '../../../units/kept-with';
import type { LandmarkName } from '../../../marks/landmark';
import { fitLine } from '../../../signal/fit-line';
import type { MissingReason, Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { kickCrests, type SwimmerBounds, swimmerBounds } from './kick-crests';
import { kickPhase } from './kick-phase';
import { landmarkDistance } from '../context/landmark-distance';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { z95 } from '../../../uncertainty/normal-quantile';
import { mergedFrames } from '../points/merged-frames';
import { waveNotSeen } from '../context/side-view';
import { tracePeriod } from './trace-period';
import { isLagOfBody, unwrappedLag } from './unwrapped-lag';
import { waveReadingsWords } from '../../../words/wave-readings';

/** Landmarks down which the wave is followed; the arms are left out: they stroke. */
export const bodyWaveLandmarks = [
  'shoulder',
  'hip',
  'knee',
  'ankle',
  'toe',
] as const satisfies readonly LandmarkName[];

interface BodyWave {
  /** Radians of the kick's wave per unit of length along travel; positive runs toward the toes. */
  readonly slope: number;
  readonly slopeVariance: number;
  /** 95 % interval of the slope of what the swimmer does; holds the slope along the bent body too. Null without cycles of their own. */
  readonly swimmerSlope: SwimmerBounds | null;
  readonly angularFrequency: number;
  /** Relative variance of the frequency. */
  readonly frequencyVariance: number;
  readonly cycles: number;
  readonly frames: readonly number[];
  readonly eventIds: readonly string[];
  readonly shortEnds: boolean;
  /** Only points below the hip, or only points above the ankle, could be used. */
  readonly isOfHalf: boolean;
}

export type BodyWaveResult =
  | { readonly ok: true; readonly wave: BodyWave }
  | { readonly ok: false; readonly reasons: readonly [MissingReason, ...MissingReason[]] };

/**
 * Wave number of the kick down the body: straight line of unwrapped phase lag on mean distance along travel, through the
 * landmarks from shoulder to toe that can be told (two at least).
 */
export const bodyWave: (context: BodyContext) => BodyWaveResult = keptWith(waveDown);

function waveDown(context: BodyContext): BodyWaveResult {
  const rows: { landmark: LandmarkName; s: number; arc: number; phase: number; variance: number }[] = [];
  let frames: readonly number[] = [];
  let reasons: readonly [MissingReason, ...MissingReason[]] | null = null;
  let shortEnds = false;
  let distance = 0;
  let arc = 0;
  let lengthVariance = 0;
  let before: LandmarkName | null = null;
  let skipped: (BodyWaveResult & { readonly ok: false }) | null = null;
  for (const landmark of bodyWaveLandmarks) {
    const result = kickPhase(context, landmark);
    if (!result.ok) {
      reasons ??= result.reasons;
      skipped ??= { ok: false, reasons: result.reasons };
      continue;
    }
    const { harmonic } = result;
    // a phase vaguer than a quarter turn at 95 % can't be unwrapped with its neighbour's
    if (!(Math.sqrt(harmonic.phaseVariance) < 0.8)) {
      reasons ??= [{ code: 'needs-denser-trace', landmark }];
      skipped ??= { ok: false, reasons: [{ code: 'needs-denser-trace', landmark }] };
      continue;
    }
    const from = before;
    if (before) {
      const link = landmarkDistance(context, before, landmark);
      if (!link) {
        reasons ??= [{ code: 'needs-landmark', landmark, have: 0, need: 1 }];
        continue;
      }
      distance += link.along;
      arc += link.value;
      lengthVariance += link.variance;
    }
    before = landmark;
    const last = rows.at(-1);
    const lag = last && from ? unwrappedLag(from, landmark, harmonic.phase - last.phase) : 0;
    // over a gap a lag no wave down a body has may be off by a turn: the point between would tell
    if (from && skipped && !isLagOfBody(from, landmark, lag)) return skipped;
    skipped = null;
    const phase = last ? last.phase + lag : harmonic.phase;
    rows.push({ landmark, s: distance, arc, phase, variance: harmonic.phaseVariance });
    shortEnds ||= result.wave.shortEnds;
    frames = mergedFrames(frames, result.wave.frames);
  }
  const { cycles } = context;
  const missing = reasons ?? ([{ code: 'needs-landmark', landmark: 'hip', have: 0, need: 1 }] as const);
  if (!cycles || rows.length < 2) return { ok: false, reasons: missing };
  const rhythm = tracePeriod(context, cycles);
  const line = fitLine(
    rows.map((r) => r.s),
    rows.map((r) => r.phase),
  );
  if (!line) return { ok: false, reasons: [{ code: 'degenerate', what: 'zero-length' }] };
  const slopeOn = (places: readonly number[]) => (phases: readonly number[]) =>
    fitLine(places, phases)?.slope ?? Number.NaN;
  const places = rows.map((r) => r.s);
  const phases = rows.map((r) => r.phase);
  const bounds = swimmerBounds(
    rows.map((r) => kickCrests(context, r.landmark)),
    phases,
    slopeOn(places),
  );
  const bent = slopeOn(rows.map((r) => r.arc))(phases);
  const meanS = rows.reduce((sum, r) => sum + r.s, 0) / rows.length;
  const marks = rows.reduce((sum, r) => sum + ((r.s - meanS) * line.slopeVariance) ** 2 * r.variance, 0);
  return {
    ok: true,
    wave: {
      slope: line.slope,
      swimmerSlope: bounds && { low: Math.min(bounds.low, bent), high: Math.max(bounds.high, bent) },
      slopeVariance: marks + (line.slope ** 2 * lengthVariance) / distance ** 2,
      angularFrequency: (2 * Math.PI * cycles.kickHarmonic) / rhythm.period,
      frequencyVariance: rhythm.variance / rhythm.period ** 2,
      cycles: cycles.spans.length,
      frames,
      eventIds: cycles.eventIds,
      shortEnds,
      isOfHalf: !isWholeBody(rows.map((r) => r.landmark)),
    },
  };
}

/** Whether points stand for the body from trunk to feet. */
const isWholeBody = (names: readonly LandmarkName[]): boolean =>
  (names.includes('shoulder') || names.includes('hip')) && (names.includes('ankle') || names.includes('toe'));

/** Body-wave speed and wavelength of the kick. */
export function bodyWaveReadings(context: BodyContext): readonly Reading[] {
  const ids = ['body-wave-speed', 'body-wave-length'] as const;
  const view = waveNotSeen(context);
  if (view) return ids.map((id) => missingReading(id, view));
  const result = bodyWave(context);
  if (!result.ok) return ids.map((id) => missingReading(id, ...result.reasons));
  const { wave } = result;
  const sd = Math.sqrt(wave.slopeVariance);
  // a lag that may be none, or backward, gives a speed without bounds
  if (!(wave.slope - z95 * sd > 0)) {
    return ids.map((id) => missingReading(id, { code: 'needs-denser-trace', landmark: 'hip' }));
  }
  const perSecond = context.unit === 'm' ? 'm/s' : context.unit === 'L' ? 'L/s' : 'px/s';
  return ids.map((id) => {
    const isSpeed = id === 'body-wave-speed';
    const top = isSpeed ? wave.angularFrequency : 2 * Math.PI;
    const value = top / wave.slope;
    const part = unitPart(context, value);
    const rhythm = isSpeed ? wave.frequencyVariance * value ** 2 : 0;
    const extra = Math.sqrt(rhythm + part.own + part.shared);
    const away = (bound: number): number => Math.hypot(bound - value, z95 * extra);
    return computedReading(context, id, {
      value,
      unit: isSpeed ? perSecond : context.unit,
      ownVariance: value ** 2 * (wave.slopeVariance / wave.slope ** 2) + rhythm + part.own,
      sharedVariance: part.shared,
      swimmerBounds: speedBounds(value, top, wave.swimmerSlope, extra),
      bounds: {
        low: value - away(top / (wave.slope + z95 * sd)),
        high: value + away(top / (wave.slope - z95 * sd)),
      },
      cycles: wave.cycles,
      frames: wave.frames,
      landmarks: bodyWaveLandmarks,
      eventIds: wave.eventIds,
      usesLevel: true,
      notes: wave.shortEnds ? ['short-ends'] : [],
    });
  });
}

/**
 * What the swimmer does, of a speed `top / slope`, beside what the unit may be off by (`extra`, a standard deviation); null
 * where a slope may be none, so that there are no bounds.
 */
export function speedBounds(
  value: number,
  top: number,
  slope: SwimmerBounds | null,
  extra: number,
): SwimmerBounds | null {
  if (!slope || !(slope.low > 0)) return null;
  const [low, high] = [top / slope.high, top / slope.low];
  return {
    low: value - Math.hypot(Math.max(0, value - low), z95 * extra),
    high: value + Math.hypot(Math.max(0, high - value), z95 * extra),
  };
}

const source = waveReadingsWords('phaseLagOver');

export const bodyWaveDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'body-wave-speed',
    group: 'body-wave',
    label: waveReadingsWords('bodyWaveSpeed'),
    brief: waveReadingsWords('shoulderToeAlong'),
    definition: waveReadingsWords('speedAtWhich'),
    forCoach: waveReadingsWords('howFastWaveTravels'),
    forSwimmer: waveReadingsWords('howFastWaveRuns'),
    source,
    digits: 2,
  },
  {
    id: 'body-wave-length',
    group: 'body-wave',
    label: waveReadingsWords('bodyWaveLength'),
    brief: waveReadingsWords('oneFullWaveAlong'),
    definition: waveReadingsWords('lengthOneFull'),
    forCoach: waveReadingsWords('longWaveMeans'),
    forSwimmer: waveReadingsWords('howLongOneWave'),
    source,
    digits: 2,
  },
];
