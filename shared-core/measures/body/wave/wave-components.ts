import { type LandmarkName, landmarkNames } from '../../../marks/landmark';
import { pluralWords } from '../../../marks/mark-words';
import { sizeInterval, trueSize } from '../../../signal/size-interval';
import { waveHarmonics } from '../../../signal/wave-harmonics';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { MissingReason, Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { eventsOf } from '../../events/event-list';
import type { CycleFrame } from '../context/cycle-frame';
import type { TimedEvent } from '../../timed-event';
import { fitInDoubtOfPeriod } from './fit-in-doubt-of-period';
import { type LandmarkWave, landmarkWave, waveNotes } from './landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import type { Measured } from '../reading/measured';
import { readingFreedom } from '../reading/reading-freedom';
import { studentWidening } from '../../../uncertainty/student-quantile';
import { waveNotSeen } from '../context/side-view';
import { waveReadingsWords } from '../../../words/wave-readings';

const orders = [1, 2, 3] as const;
const degree = 180 / Math.PI;

/**
 * A phase is told from this many standard deviations of its amplitude on: nearer to nothing, those that happen to be
 * seen at all are seen where the noise points. Our default; the coverage bench is what it was set by.
 */
export const phaseFrom = 4.5;

interface Component {
  /** Half of peak-to-peak, as it is read. */
  readonly amplitude: number;
  /** With its noise, as it was seen. */
  readonly seen: number;
  readonly sd: number;
  readonly phase: number;
  /** Variance across the amplitude seen, as a share of its square. */
  readonly acrossVariance: number;
  /** Of the phase, from the marked starts of the cycles; radians squared. */
  readonly startVariance: number;
}

/** Amplitude, phase and share of power of the first three harmonics of every landmark. */
export function waveComponentReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  return landmarkNames.flatMap((landmark): Reading[] => {
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
  const marks = originMarks(context, wave.frame);
  const parts = components(wave, marks);
  const common = {
    cycles: wave.frame.spans.length,
    frames: wave.frames,
    landmarks: [landmark],
    eventIds: wave.frame.eventIds,
    usesLevel: true,
    notes: waveNotes(wave),
  };
  const wider = studentWidening(
    readingFreedom(context, { ...common, value: 1, unit: 'ratio', ownVariance: 1 }),
  );
  const denser: MissingReason = { code: 'needs-denser-trace', landmark };
  return orders.flatMap((k): Reading[] => {
    const part = parts[k - 1];
    const ids = [
      `harmonic-${k}-${landmark}`,
      `harmonic-phase-${k}-${landmark}`,
      `harmonic-share-${k}-${landmark}`,
    ] as const;
    if (!part) return ids.map((id) => missingReading(id, denser));
    const share = parts.length > 1 ? shareOf(parts, k, wider) : null;
    const seen = part.amplitude > phaseFrom * part.sd;
    return [
      computedReading(context, ids[0], { ...common, ...amplitudeOf(context, part, wider) }),
      marks.length === 0
        ? missingReading(ids[1], { code: 'needs-events', kind: originKind(wave.frame), have: 0, need: 1 })
        : seen
          ? computedReading(context, ids[1], { ...common, ...phaseOf(part) })
          : missingReading(ids[1], denser),
      share ? computedReading(context, ids[2], { ...common, ...share }) : missingReading(ids[2], denser),
    ];
  });
}

/**
 * Phase of a harmonic, degrees. The directions that what was seen does not speak against are those it lies across by no more
 * than the noise: an arcsine, wider than the slope of the angle says where the noise is not small.
 *
 * @see Fieller 1954, J R Stat Soc B 16:175–185 (the same for a ratio; from memory)
 */
function phaseOf(part: Component): Pick<Measured, 'value' | 'unit' | 'ownVariance' | 'bounds'> {
  const value = part.phase * degree;
  const across = phaseHalfWidth(part.acrossVariance);
  const half = degree * Math.hypot(across, z95 * Math.sqrt(part.startVariance));
  return {
    value,
    unit: '°',
    ownVariance: (half / z95) ** 2,
    bounds: { low: value - half, high: value + half },
  };
}

/** Half of a phase's 95 % interval, radians, from the variance across the amplitude seen as a share of its square. */
export function phaseHalfWidth(acrossVariance: number): number {
  return Math.asin(Math.min(1, z95 * Math.sqrt(acrossVariance)));
}

/** @param wider by how much a noise is to be taken larger that was itself estimated: where nothing ends counts in it, not in the bounds */
function amplitudeOf(
  context: BodyContext,
  { amplitude, seen, sd }: Component,
  wider: number,
): Pick<Measured, 'value' | 'unit' | 'ownVariance' | 'sharedVariance' | 'bounds' | 'widened'> {
  const unit = unitPart(context, amplitude);
  const scale = z95 * Math.sqrt(unit.own + unit.shared);
  const { low, high } = sizeInterval(seen, wider * sd);
  return {
    value: amplitude,
    unit: context.unit,
    ownVariance: sd ** 2 + unit.own,
    sharedVariance: unit.shared,
    bounds: {
      low: Math.max(0, amplitude - Math.hypot(Math.max(0, amplitude - low), scale)),
      high: amplitude + Math.hypot(Math.max(0, high - amplitude), scale),
    },
    widened: true,
  };
}

/**
 * Share of the power of all harmonics: own / (own + rest), the rest taken as one size in as many directions as it has parts.
 * Each of the two sizes has bounds of its own, and what the share would be at those is known; how far they take it, squared
 * and added, makes the share's bounds.
 *
 * @see Zou, Donner 2008, Stat Med 27:1693–1702 (intervals of functions from the intervals of their parts; from memory)
 */
function shareOf(
  parts: readonly Component[],
  k: number,
  wider: number,
): Pick<Measured, 'value' | 'unit' | 'ownVariance' | 'bounds' | 'widened'> | null {
  const part = parts[k - 1];
  const others = parts.filter((each) => each !== part);
  if (!part || others.length === 0) return null;
  const directions = others.length === 1 ? 2 : 4;
  const seen = Math.hypot(...others.map((each) => each.seen));
  const sd = Math.sqrt(others.reduce((sum, each) => sum + each.sd ** 2, 0) / others.length);
  const share = (own: number, rest: number): number =>
    own > 0 || rest > 0 ? 100 * Math.min(1, own ** 2 / (own ** 2 + rest ** 2)) : 0;
  const own = { value: part.amplitude, ...sizeInterval(part.seen, wider * part.sd) };
  const rest = { value: trueSize(seen, sd, directions), ...sizeInterval(seen, wider * sd, directions) };
  if (!(own.value > 0 || rest.value > 0)) return null;
  const value = share(own.value, rest.value);
  const below = Math.hypot(
    value - share(Math.max(0, own.low), rest.value),
    value - share(own.value, rest.high),
  );
  const above = Math.hypot(
    share(own.high, rest.value) - value,
    share(own.value, Math.max(0, rest.low)) - value,
  );
  const low = Math.max(0, value - below);
  const high = Math.min(100, value + above);
  return {
    value,
    unit: '%',
    ownVariance: ((high - low) / (2 * z95)) ** 2,
    bounds: { low, high },
    widened: true,
  };
}

/**
 * Marks that phases are counted from: hand entries where strokes are marked, else kick tops, whichever turn the cycles go by.
 * Which of tops and bottoms is marked oftener would hang on a single mark, and turn every phase by half a kick.
 */
function originMarks({ events }: BodyContext, frame: CycleFrame): readonly TimedEvent[] {
  const { spans } = frame;
  const [from, to] = [spans[0]?.start ?? 0, spans.at(-1)?.end ?? 0];
  const marks = eventsOf(events, originKind(frame));
  return marks.filter(({ time }) => time >= from - 1e-9 && time <= to + 1e-9);
}

const originKind = ({ base }: CycleFrame): 'entry' | 'kick-top' => (base === 'stroke' ? 'entry' : 'kick-top');

/** Harmonics of the common fit over all whole cycles; phases counted from the mean place of the marks in the cycle. */
function components(wave: LandmarkWave, marks: readonly TimedEvent[]): readonly Component[] {
  const { period } = wave;
  const times = marks.map(({ time }) => wave.clock(time));
  const first = times[0] ?? wave.pooled.centre;
  const late = times.map((time) => time - first - period * Math.round((time - first) / period));
  const origin = first + late.reduce((sum, v) => sum + v, 0) / Math.max(1, marks.length);
  const starts = marks.reduce((sum, each) => sum + each.variance, 0) / Math.max(1, marks.length) ** 2;
  const phases = waveHarmonics(wave.pooled, wave.sd ** 2, origin);
  return waveHarmonics(fitInDoubtOfPeriod(wave), wave.sd ** 2, origin)
    .slice(0, orders.length)
    .map((h, i) => ({
      amplitude: h.amplitude,
      seen: h.seen,
      sd: h.amplitudeSd,
      phase: h.phase,
      acrossVariance: phases[i]?.phaseVariance ?? h.phaseVariance,
      startVariance: (h.k * wave.pooled.angularFrequency) ** 2 * starts,
    }));
}

const source = waveReadingsWords('sandersCappaertDevlin1995');

export const waveComponentDefinitions: readonly ReadingDefinition[] = landmarkNames.flatMap((landmark) =>
  orders.flatMap((k): ReadingDefinition[] => {
    const word = pluralWords[landmark];
    const theirs = landmark === 'ear' ? 'head’s' : `${word}’`;
    const which = ['first', 'second', 'third'][k - 1] ?? '';
    return [
      {
        id: `harmonic-${k}-${landmark}`,
        group: 'body-wave',
        label: waveReadingsWords('harmonic', { k, word }),
        brief: waveReadingsWords('halfPeakPeak'),
        definition: waveReadingsWords('amplitudeCHalf', { k, which, word }),
        forCoach: waveReadingsWords('partMovementGoes', { k, theirs }),
        forSwimmer:
          landmark === 'ear'
            ? waveReadingsWords('oneWavesMake', { word })
            : waveReadingsWords('oneWavesMakeUp', { word }),
        source,
        digits: 3,
      },
      {
        id: `harmonic-phase-${k}-${landmark}`,
        group: 'body-wave',
        label: waveReadingsWords('phase', { k, word }),
        brief: waveReadingsWords('whereItsCrest'),
        definition: waveReadingsWords('phaseHarmonicHeight', { k, which, word }),
        forCoach: waveReadingsWords('whenCycleWave', { word }),
        forSwimmer:
          landmark === 'ear'
            ? waveReadingsWords('whenYourAtCrest', { word })
            : waveReadingsWords('whenYourAtCrestWave', { word }),
        source,
        digits: 0,
      },
      {
        id: `harmonic-share-${k}-${landmark}`,
        group: 'body-wave',
        label: waveReadingsWords('powerShare', { k, word }),
        brief: waveReadingsWords('cSumC'),
        definition: waveReadingsWords('shareHarmonicSummed', { which, word }),
        forCoach:
          landmark === 'ear'
            ? waveReadingsWords('whetherFollowsStroke', { word })
            : waveReadingsWords('whetherFollowStroke', { word }),
        forSwimmer: waveReadingsWords('howMuchYourMovement', { theirs }),
        source,
        digits: 1,
      },
    ];
  }),
);
