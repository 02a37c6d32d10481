import type { MissingReason, Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { kickPeriod } from '../../events/kick-period';
import { landmarkWave } from './landmark-wave';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { waveNotSeen } from '../context/side-view';
import { heightsByStroke } from './heights-by-stroke';
import { type ToeExtreme, toeExtremes } from './toe-extremes';
import { boundsWith, meanPeakToPeak, type PeakToPeak, relativeReading, widerFor } from './undulation';
import { waveReadingsWords } from '../../../words/wave-readings';

const id = 'kick-amplitude-toe';
const relativeId = 'kick-amplitude-toe-relative';

interface KickHeights extends PeakToPeak {
  readonly eventIds: readonly string[];
  readonly frames: readonly number[];
  readonly kicks: number;
  /** Heights next to one another share turns of the toe: see `Measured.sharing`. */
  readonly sharing: number;
  /** One height a stroke, where strokes have turns alike; else null. */
  readonly independent: readonly number[] | null;
}

/** Kick amplitude of the toes, absolute and per body length. */
export function kickAmplitudeReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  if (view) return [missingReading(id, view), missingReading(relativeId, view)];
  const heights = kickHeights(context) ?? fromWave(context);
  if (!heights) {
    const reason = heightsMissing(context);
    return [missingReading(id, reason), missingReading(relativeId, reason)];
  }
  const common = {
    cycles: heights.kicks,
    frames: heights.frames,
    landmarks: ['toe'] as const,
    eventIds: heights.eventIds,
    usesLevel: true,
    notes: [],
  };
  const part = unitPart(context, heights.value);
  return [
    computedReading(context, id, {
      ...common,
      value: heights.value,
      unit: context.unit,
      ownVariance: heights.variance + part.own,
      sharedVariance: part.shared,
      perCycle: heights.perCycle,
      ...spreadOf(heights),
      ...boundsWith(heights, 1, part.own + part.shared),
    }),
    relativeReading(context, relativeId, heights, { ...common, ...spreadOf(heights) }),
  ];
}

/** What is missing for a height: a turn of the kick between two of the other kind, and the toes on all three. */
function heightsMissing(context: BodyContext): MissingReason {
  const marks = (kind: 'kick-top' | 'kick-bottom'): number =>
    context.events.filter((each) => each.event.kind === kind).length;
  const [tops, bottoms] = [marks('kick-top'), marks('kick-bottom')];
  if (tops < 2 && bottoms < 2) return { code: 'needs-events', kind: 'kick-top', have: tops, need: 2 };
  if (tops === 0) return { code: 'needs-events', kind: 'kick-top', have: 0, need: 1 };
  if (bottoms === 0) return { code: 'needs-events', kind: 'kick-bottom', have: 0, need: 1 };
  const lines = context.trace('toe').times.length;
  if (lines < 3) return { code: 'needs-landmark', landmark: 'toe', have: lines, need: 3 };
  const rhythm = kickPeriod(context);
  if (!rhythm) return { code: 'needs-reading', reading: 'kick-frequency' };
  const read = toeExtremes(context, rhythm.seconds);
  for (const [kind, side, all] of [
    ['kick-top', 'top', tops],
    ['kick-bottom', 'bottom', bottoms],
  ] as const)
    if (read.filter((each) => each.kind === side).length < all)
      return { code: 'needs-landmark-at', landmark: 'toe', kind };
  return { code: 'needs-event-beside', kind: 'kick-bottom', side: 'after', of: 'kick-top' };
}

const spreadOf = ({ independent, sharing }: KickHeights): Pick<KickHeights, 'independent' | 'sharing'> =>
  independent ? { independent, sharing: 1 } : { independent, sharing };

/** The amplitude in pool units, for readings made from it; null when it can't be had. */
export function kickAmplitude(context: BodyContext): KickHeights | null {
  return kickHeights(context) ?? fromWave(context);
}

/**
 * Height of each top above the straight line between its neighbouring bottoms, and of each bottom below the line
 * between its tops. Events stray from the true turn of the kick by their own error, which always loses height: for a
 * kick of angular frequency ω and events of variance σ² the loss is ½ω²σ² of the height, and is given back.
 */
function kickHeights(context: BodyContext): KickHeights | null {
  const rhythm = kickPeriod(context);
  if (!rhythm) return null;
  const extremes = toeExtremes(context, rhythm.seconds);
  const omega = (2 * Math.PI) / rhythm.seconds;
  const weights = new Map<ToeExtreme, number>();
  const perCycle: { value: number; fromFrame: number; toFrame: number }[] = [];
  const ofTurn = new Map<string, number>();
  // what an extreme loses by its timing it loses for all heights it takes part in
  const strayed = new Map<ToeExtreme, number>();
  for (let i = 1; i < extremes.length - 1; i++) {
    const before = extremes[i - 1];
    const here = extremes[i];
    const after = extremes[i + 1];
    if (!before || !here || !after || before.kind === here.kind || after.kind === here.kind) continue;
    const span = after.event.time - before.event.time;
    // a missed mark between neighbours would compare kicks that are not neighbours
    if (!(span > 0) || span > 1.6 * rhythm.seconds) continue;
    const share = (here.event.time - before.event.time) / span;
    const sign = here.kind === 'top' ? 1 : -1;
    const parts: [ToeExtreme, number][] = [
      [before, -sign * (1 - share)],
      [here, sign],
      [after, -sign * share],
    ];
    const raw = parts.reduce((sum, [e, w]) => sum + w * e.y, 0);
    // loss of each of the three, as a share of half the height, by how much it weighs
    const loss = parts.reduce(
      (sum, [e, w]) => sum + (Math.abs(w) / 2) * (1 - Math.exp(-(omega ** 2 * e.straySquare) / 2)),
      0,
    );
    const height = raw / (1 - loss);
    ofTurn.set(here.event.event.id, height);
    perCycle.push({
      value: height,
      fromFrame: before.event.event.frame,
      toFrame: after.event.event.frame,
    });
    for (const [e, w] of parts) {
      weights.set(e, (weights.get(e) ?? 0) + w / (1 - loss));
      strayed.set(e, (strayed.get(e) ?? 0) + Math.abs(w) * raw * omega ** 2 * e.straySquare);
    }
  }
  const n = perCycle.length;
  if (n === 0) return null;
  const value = perCycle.reduce((sum, c) => sum + c.value, 0) / n;
  const used = [...weights.keys()];
  const marks = used.reduce((sum, e) => sum + ((weights.get(e) ?? 0) / n) ** 2 * e.variance, 0);
  // a height by itself has its own turn once and each neighbour by half; the mean weighs every turn by what is summed here
  const single = 1 + 2 * 0.5 ** 2;
  const sharing = used.reduce((sum, e) => sum + (weights.get(e) ?? 0) ** 2, 0) / (n * single);
  const timing = [...strayed.values()].reduce((sum, v) => sum + v ** 2 / 8, 0);
  return {
    value,
    independent: heightsByStroke(context, ofTurn, value),
    variance: marks + timing / (n * n),
    perCycle,
    // the kicks of one stroke are big or small together
    sharing: Math.max(1, sharing, context.cycles?.base === 'stroke' ? n / context.cycles.spans.length : 1),
    kicks: Math.max(1, Math.floor((n + 1) / 2)),
    eventIds: used.map((e) => e.event.event.id),
    frames: [...new Set(used.map((e) => e.event.event.frame))].sort((a, b) => a - b),
  };
}

function fromWave(context: BodyContext): KickHeights | null {
  if (context.cycles?.base !== 'kick') return null;
  const trace = context.trace('toe');
  const result = landmarkWave(context, 'toe', trace, trace.y);
  const found = result.ok ? meanPeakToPeak(result.wave, widerFor(context, result.wave, ['toe'])) : null;
  if (!found || !result.ok) return null;
  const { frame, frames } = result.wave;
  return {
    ...found,
    kicks: frame.spans.length,
    independent: null,
    sharing: 1,
    eventIds: frame.eventIds,
    frames,
  };
}

export const kickAmplitudeDefinitions: readonly ReadingDefinition[] = [
  {
    id,
    group: 'kick',
    label: waveReadingsWords('kickAmplitude'),
    brief: waveReadingsWords('toeHeightTop'),
    definition: waveReadingsWords('peakPeakMean'),
    forCoach: waveReadingsWords('howBigKickRead'),
    forSwimmer: waveReadingsWords('howFarYourFeet'),
    source: waveReadingsWords('ourOwnDefinition'),
    digits: 3,
  },
  {
    id: relativeId,
    group: 'kick',
    label: waveReadingsWords('kickAmplitudeBody'),
    brief: waveReadingsWords('toeHeightBody'),
    definition: waveReadingsWords('kickAmplitudeDivided'),
    forCoach: waveReadingsWords('sizeKickMade'),
    forSwimmer: waveReadingsWords('howBigYourKick'),
    source: waveReadingsWords('bodyLengthFrom'),
    digits: 3,
  },
];
