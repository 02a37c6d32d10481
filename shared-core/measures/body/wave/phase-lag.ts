import type { LandmarkName } from '../../../marks/landmark';
import { pluralWords } from '../../../marks/mark-words';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { MissingReason, Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { speedBounds } from './body-wave-speed';
import { kickCrests, swimmerBounds } from './kick-crests';
import { type KickPhase, kickPhase } from './kick-phase';
import { landmarkDistance } from '../context/landmark-distance';
import { waveNotes } from './landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { mergedFrames } from '../points/merged-frames';
import { waveNotSeen } from '../context/side-view';
import { tracePeriod } from './trace-period';
import { unwrappedLag } from './unwrapped-lag';
import { phaseFrom, phaseHalfWidth } from './wave-components';
import { waveReadingsWords } from '../../../words/wave-readings';

type Pair = readonly [LandmarkName, LandmarkName];

/** Neighbouring landmarks head to toe, each above the next; the arms are left out: they stroke. */
export const neighbours: readonly Pair[] = [
  ['ear', 'shoulder'],
  ['shoulder', 'hip'],
  ['hip', 'knee'],
  ['knee', 'ankle'],
  ['ankle', 'toe'],
];

/** Head and shoulders lie too close together for a lag that is well above its error to be had without luck. */
const hasSpeed = ([near]: Pair): boolean => near !== 'ear';
const idsOf = (pair: Pair): readonly string[] =>
  hasSpeed(pair) ? [lagId(pair), speedId(pair)] : [lagId(pair)];

const lagId = ([a, b]: Pair): string => `phase-lag-${a}-${b}`;
const speedId = ([a, b]: Pair): string => `wave-speed-${a}-${b}`;
const degree = 180 / Math.PI;

/**
 * Speed of a wave over a stretch of the body, units a second: c = d · 2π(k/T) / Δφ.
 *
 * @param distance along travel, any unit
 * @param lag phase of the farther end behind the nearer one's, radians, not 0
 * @param period base period T, seconds; `harmonic` the wave's own number k in it
 * @see Sanders, Cappaert, Devlin 1995, J Biomech 28:9–16
 */
export function waveSpeed(distance: number, lag: number, period: number, harmonic: number): number {
  return (distance * 2 * Math.PI * (harmonic / period)) / lag;
}

/** Lag of the kick's wave between neighbouring landmarks, and the speed at which it runs from one to the other. */
export function phaseLagReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  return neighbours.flatMap((pair): Reading[] => {
    const missing = (reasons: readonly [MissingReason, ...MissingReason[]]): Reading[] =>
      idsOf(pair).map((id) => missingReading(id, ...reasons));
    if (view) return missing([view]);
    const [near, far] = [kickPhase(context, pair[0]), kickPhase(context, pair[1])];
    if (!near.ok) return missing(near.reasons);
    if (!far.ok) return missing(far.reasons);
    for (const [landmark, { harmonic }] of [[pair[0], near] as const, [pair[1], far] as const])
      if (!(harmonic.amplitude > phaseFrom * harmonic.amplitudeSd))
        return missing([{ code: 'needs-denser-trace', landmark }]);
    return lagAndSpeed(context, pair, near, far);
  });
}

function lagAndSpeed(context: BodyContext, pair: Pair, near: KickPhase, far: KickPhase): Reading[] {
  const lag = unwrappedLag(...pair, far.harmonic.phase - near.harmonic.phase);
  // the noise of the two is their own, what is off in the cycle's start or length is off in both
  const half = Math.hypot(
    phaseHalfWidth(near.harmonic.phaseVariance),
    phaseHalfWidth(far.harmonic.phaseVariance),
  );
  const { frame } = near.wave;
  const common = {
    cycles: frame.spans.length,
    frames: mergedFrames(near.wave.frames, far.wave.frames),
    landmarks: pair,
    eventIds: frame.eventIds,
    usesLevel: true,
    notes: near.wave.shortEnds ? waveNotes(near.wave) : waveNotes(far.wave),
  };
  const swimmer = swimmerBounds(
    pair.map((landmark) => kickCrests(context, landmark)),
    [0, lag],
    ([, behind = 0]) => behind,
  );
  const told = computedReading(context, lagId(pair), {
    ...common,
    value: lag * degree,
    unit: '°',
    swimmerBounds: swimmer && { low: swimmer.low * degree, high: swimmer.high * degree },
    ownVariance: ((half * degree) / z95) ** 2,
  });
  if (!hasSpeed(pair)) return [told];
  const id = speedId(pair);
  const link = landmarkDistance(context, ...pair);
  // a lag that may be none, or backward, gives a speed without bounds; near that, those seen are the large ones by chance
  if (!link || !(link.along > 0) || !(lag > (phaseFrom / z95) * half))
    return [told, missingReading(id, { code: 'needs-denser-trace', landmark: pair[1] })];
  const rhythm = tracePeriod(context, frame);
  const value = waveSpeed(link.along, lag, rhythm.period, frame.kickHarmonic);
  const part = unitPart(context, value);
  const relative = link.variance / link.along ** 2 + rhythm.variance / rhythm.period ** 2;
  const extra = z95 * Math.sqrt(relative * value ** 2 + part.own + part.shared);
  const at = (shift: number): number => (value * lag) / (lag + shift);
  return [
    told,
    computedReading(context, id, {
      ...common,
      value,
      unit: context.unit === 'm' ? 'm/s' : context.unit === 'L' ? 'L/s' : 'px/s',
      ownVariance: value ** 2 * ((half / z95 / lag) ** 2 + relative) + part.own,
      sharedVariance: part.shared,
      swimmerBounds: speedBounds(
        value,
        value * lag,
        // along the bent body the same lag is worth a longer way
        swimmer && { low: Math.min(swimmer.low, (lag * link.along) / link.value), high: swimmer.high },
        Math.sqrt(part.own + part.shared),
      ),
      bounds: {
        low: value - Math.hypot(value - at(half), extra),
        high: value + Math.hypot(at(-half) - value, extra),
      },
    }),
  ];
}

const source = waveReadingsWords('phaseLagBetween');

export const phaseLagDefinitions: readonly ReadingDefinition[] = neighbours.flatMap(
  (pair): ReadingDefinition[] => {
    const [near, far] = [pluralWords[pair[0]], pluralWords[pair[1]]];
    const words: readonly ReadingDefinition[] = [
      {
        id: lagId(pair),
        group: 'body-wave',
        label: waveReadingsWords('phaseLag', { near, far }),
        brief: waveReadingsWords('n360OneKickLater'),
        definition: waveReadingsWords('howMuchLater', { far, near }),
        forCoach: waveReadingsWords('whetherWavePasses', { near, far }),
        forSwimmer: waveReadingsWords('howMuchLaterThan', { near, far }),
        source,
        digits: 0,
      },
      {
        id: speedId(pair),
        group: 'body-wave',
        label: waveReadingsWords('waveSpeed', { near, far }),
        brief: waveReadingsWords('distanceAlongTravel'),
        definition: waveReadingsWords('meanDistanceAlong', { near, far }),
        forCoach: waveReadingsWords('howFastWaveRunsOver'),
        forSwimmer: waveReadingsWords('howFastWaveRunsFrom', { near, far }),
        source,
        digits: 2,
      },
    ];
    return words.slice(0, idsOf(pair).length);
  },
);
