import type {
  SceneItem,
  Singles,
  ComputedReading,
  MissingReading,
  MissingReason,
  ReadingNote,
} from '../../reading';
import { type Doubt, joinedDoubts } from '../../doubt';
import type { BodyContext } from '../context/body-context';
import { fewPictures } from './few-pictures';
import { followedAmong } from './followed-among';
import { markingNote } from './marking-note';
import { pictureNotes } from './picture-notes';
import { standardDeviation } from '../../../signal/standard-deviation';
import { mixedQuantile975 } from '../../../uncertainty/mixed-quantile';
import { goesOtherWay } from '../context/other-way';
import { readingFreedom } from './reading-freedom';
import { z95 } from '../../../uncertainty/normal-quantile';
import { studentWidening } from '../../../uncertainty/student-quantile';
import type { CycleValue, Measured } from './measured';

/** Fewer cycles than this are said to be few (Connaboy et al. 2010: six cycles give ICC 0.81–0.996). */
const fewCyclesBelow = 6;

/** Dress a measured value as a computed reading: both intervals, notes and where it came from. Never of zero width. */
export function computedReading(context: BodyContext, id: string, measured: Measured): ComputedReading {
  const sharedVariance = measured.sharedVariance ?? 0;
  // an interval of zero width would claim a perfect mark: hold it at a billionth of the value's own size
  const floor = (1e-9 * Math.max(Math.abs(measured.value), 1e-3)) ** 2;
  const ownVariance = Math.max(measured.ownVariance, floor);
  const freedom = readingFreedom(context, measured);
  const wider = measured.widened ? 1 : studentWidening(freedom);
  const half = z95 * Math.sqrt(ownVariance + sharedVariance);
  const below = measured.bounds ? measured.value - measured.bounds.low : half;
  const above = measured.bounds ? measured.bounds.high - measured.value : half;
  // a bound at the end of what there can be stays there
  const low = measured.bounds?.low === 0 ? 0 : measured.value - wider * Math.max(0, below);
  const full = measured.unit === '%' && measured.bounds?.high === 100;
  const high = full ? 100 : measured.value + wider * Math.max(0, above);
  // more than half a turn to either side is every direction there is
  const turns = measured.unit === '°';
  const perCycle = measured.perCycle ?? [];
  const notes = new Set<ReadingNote>(measured.notes ?? []);
  const marking = markingNote(context, measured);
  if (marking) notes.add(marking);
  if (context.input.swim.clip.slowdown.source === 'assumed') notes.add('slowdown-assumed');
  if (measured.cycles > 0 && measured.cycles < fewCyclesBelow) notes.add('few-cycles');
  if (measured.instants && fewPictures(context)) notes.add('few-pictures');
  if (measured.usesLevel && context.transform.tilt.from === 'assumed') notes.add('level-assumed');
  for (const note of pictureNotes(context, measured)) notes.add(note);
  if (readsOutside(context, measured)) notes.add('points-outside-picture');
  return {
    status: 'computed',
    id,
    value: measured.value,
    unit: measured.unit,
    interval: {
      low: turns ? Math.max(low, measured.value - 180) : low,
      high: turns ? Math.min(high, measured.value + 180) : high > low ? high : low + 2 * half,
      question: 'this-swim',
    },
    otherInterval: measured.swimmerBounds
      ? { ...measured.swimmerBounds, question: 'this-swimmer' }
      : measured.spread === false
        ? null
        : spreadInterval(context, measured),
    sharedVariance,
    ownVariance,
    ...(Number.isFinite(freedom) ? { freedom } : {}),
    cycles: measured.cycles,
    followed: followedAmong(context, measured),
    perCycle,
    singles: measured.singles ?? singlesOf(perCycle),
    from: {
      eventIds: measured.eventIds ?? [],
      postureFrames: measured.frames,
      sceneItems: sceneItems(context, measured),
    },
    notes: [...notes],
    doubts: joinedDoubts(measured.doubts ?? [], ownDoubts(context, measured)),
  };
}

/** What every reading of its kind is doubted for. */
function ownDoubts(context: BodyContext, { usesTravel, usesDirection }: Measured): readonly Doubt[] {
  return (usesTravel || usesDirection) && goesOtherWay(context)
    ? [{ code: 'goes-other-way', frames: [] }]
    : [];
}

/** Whether points of a landmark it reads lie outside the picture, so that it was read without them. */
function readsOutside({ outside }: BodyContext, { frames, landmarks }: Measured): boolean {
  if (outside.size === 0 || frames.length === 0) return false;
  return landmarks ? landmarks.some((name) => outside.has(name)) : true;
}

function singlesOf(perCycle: readonly CycleValue[]): Singles | null {
  const sd = standardDeviation(perCycle.map(({ value }) => value));
  if (sd === null) return null;
  const posture = perCycle.every(({ fromFrame, toFrame }) => fromFrame === toFrame);
  return { of: posture ? 'body-lines' : 'cycles', count: perCycle.length, sd };
}

/**
 * Mean ± Student's t times its standard error from the spread between cycles. What is off alike in every cycle (scale, level,
 * body length) shows in no spread and is added, with the quantile of the two together.
 */
function spreadInterval(context: BodyContext, measured: Measured): ComputedReading['otherInterval'] {
  const { value, sharing = 1 } = measured;
  const values = measured.independent ?? (measured.perCycle ?? []).map((cycle) => cycle.value);
  const n = values.length;
  // values that share marks are worth as many fewer
  const free = n - (measured.trendTaken ? 2 : 1);
  const freedom = Math.floor(free / sharing);
  if (freedom < 1) return null;
  const mean = values.reduce((sum, each) => sum + each, 0) / n;
  const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / free;
  const spread = (sharing * variance) / n;
  // cycles alike to the last frame show no spread at all, which is rounding and not the swimmer
  if (!(Math.sqrt(spread) > 1e-9 * Math.max(Math.abs(value), 1e-3))) return null;
  const alike = alikeInEveryCycle(context, measured);
  const half = mixedQuantile975(spread, freedom, alike) * Math.sqrt(spread + alike);
  return { low: value - half, high: value + half, question: 'this-swimmer' };
}

/** Variance that all cycles of a swim have in common: of the scale or body length a value is counted in, and what is shared. */
function alikeInEveryCycle({ lengthVariance, bodyLength, unit }: BodyContext, measured: Measured): number {
  const shared = measured.sharedVariance ?? 0;
  const square = measured.value ** 2;
  const counted = measured.unit.replace(/\/s$/, '');
  if (counted === '%L' || (counted === 'L' && unit !== 'L'))
    return shared + (bodyLength ? (square * bodyLength.variance) / bodyLength.pixels ** 2 : 0);
  return counted === unit ? shared + square * lengthVariance.own : shared;
}

function sceneItems(context: BodyContext, m: Measured): ComputedReading['from']['sceneItems'] {
  const items: SceneItem[] = [];
  const { scene } = context.input.swim;
  const { tilt } = context.transform;
  // a rectangle's side may stand for the level line that was not drawn
  const tiltFrom = tilt.from === 'level' && !scene.level ? 'plane' : tilt.from;
  if (m.usesTravel && scene.travel) items.push('travel');
  if (m.usesLevel && tiltFrom === 'level') items.push('level');
  const flat = context.rectified.plane !== null && m.frames.length > 0;
  if (flat || (m.usesLevel && tiltFrom === 'plane')) items.push('plane');
  if (context.rectified.lens && m.frames.length > 0) items.push('straights');
  if ((m.usesLevel && tiltFrom === 'surface') || m.usesSurface) items.push('surface');
  if (m.usesScale ?? /^m(\/s)?$/.test(m.unit))
    if (scene.scale && !context.rectified.plane) items.push('scale');
  return items;
}

/** A reading that can't be computed, with why; the most helpful reason first. */
export function missingReading(id: string, ...reasons: MissingReason[]): MissingReading {
  return { status: 'missing', id, reasons };
}

/** The part of a length's variance that its unit brings (scale or body length), for a value in that unit. */
export function unitPart(context: BodyContext, value: number): { shared: number; own: number } {
  return {
    shared: context.lengthVariance.shared * value ** 2,
    own: context.lengthVariance.own * value ** 2,
  };
}
