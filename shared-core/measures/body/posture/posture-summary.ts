import type { EventKind } from '../../../marks/event-kind';
import { bodyChain } from '../../../marks/landmark';
import { withoutTrend } from '../../../signal/without-trend';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { MissingReason, Reading, Singles } from '../../reading';
import type { BodyContext } from '../context/body-context';
import type { Glide } from './glide';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import type { CycleValue, Measured } from '../reading/measured';
import type { PostureMeasure } from './posture-measure';
import { circularMean, turnedTo } from '../points/angles';
import { goesOtherWay, notForward } from '../context/other-way';
import { meanError, meanSd, type PostureValues } from './posture-values';
import { strokeMeans } from './stroke-means';

/** Means over more postures than this come without their single values. Our default. */
const listedPostures = 300;

/** Which postures a measure is summed up over: all, those on events of a kind, or those of a glide. */
export type PosturesAt =
  | { readonly of: 'all' }
  | {
      readonly of: 'events';
      readonly kind: EventKind;
      /** Ids of the events by frame, whether there is a posture or not. */
      readonly ids: ReadonlyMap<number, string>;
      /** The postures there, and their frames and events: rows that measures defined on all of them share. */
      readonly places: readonly number[];
      readonly frames: readonly number[];
      readonly eventIds: readonly string[];
    }
  | ({ readonly of: 'glide' } & Glide);

function isThere(at: PosturesAt, frame: number): boolean {
  if (at.of === 'events') return at.ids.has(frame);
  return at.of === 'all' || (at.from.event.frame <= frame && frame <= at.to.event.frame);
}

/** Frames of the postures at these places, and the events they hang on. */
function whereFrom(
  { frames: all }: BodyContext,
  at: PosturesAt,
  places: readonly number[],
): { readonly frames: readonly number[]; readonly eventIds: readonly string[] } {
  if (at.of === 'events' && places === at.places) return at;
  if (at.of === 'all' && places.length === all.length) return { frames: all, eventIds: [] };
  const frames = places.map((place) => all[place] as number);
  if (at.of === 'events') return { frames, eventIds: frames.flatMap((frame) => at.ids.get(frame) ?? []) };
  return { frames, eventIds: at.of === 'glide' ? [at.from.event.id, at.to.event.id] : [] };
}

/** What is known of a measure over the postures at these places before it gets its unit. */
interface Summed {
  readonly id: string;
  readonly values: PostureValues;
  readonly places: readonly number[];
  readonly mean: number;
  /** How marks and tilt make the mean uncertain, in the unit of the column. */
  readonly marks: number;
  readonly perTilt: number;
  /** What the reading says of itself in every unit. */
  readonly common: Pick<
    Measured,
    | 'cycles'
    | 'frames'
    | 'landmarks'
    | 'eventIds'
    | 'usesLevel'
    | 'usesTravel'
    | 'usesDirection'
    | 'usesSurface'
    | 'spread'
    | 'instants'
  >;
  /** The single values in the reading's unit, `scale` times the column's. */
  told(scale: number): Told;
}

/** The single values, those of them that are independent, and how they spread where they are too many to list. */
type Told = Pick<Measured, 'perCycle' | 'independent' | 'singles'>;

/** A measure over the postures at these places: its mean, how single ones lie about it, and its interval. */
export function postureSummary(
  context: BodyContext,
  measure: PostureMeasure,
  id: string,
  values: PostureValues,
  places: readonly number[],
  at: PosturesAt,
): Reading {
  const needed = missingFor(context, measure, places.length, at);
  if (needed) return missingReading(id, needed);
  const atEvents = at.of === 'events';
  const column = measure.kind === 'angle' ? turnedTogether(values.values, places) : values.values;
  const plain = average(column, places);
  const mean = measure.kind === 'angle' ? inRange(measure, plain) : plain;
  const error = meanError(context, measure, values, places, !atEvents);
  const { frames, eventIds } = whereFrom(context, at, places);
  const size = (place: number): number => {
    const value = column[place] as number;
    return measure.combine === 'root' ? Math.sqrt(Math.max(0, value)) : value + mean - plain;
  };
  const summed: Summed = {
    id,
    values,
    places,
    mean,
    marks: error.variance / places.length,
    perTilt: error.perTilt,
    common: {
      cycles: atEvents ? places.length : 0,
      frames,
      landmarks: measure.kind === 'length' ? [...new Set([...measure.needs, ...bodyChain])] : measure.needs,
      eventIds,
      usesLevel: measure.turnsWithLevel,
      usesTravel: measure.id === 'trunk-pitch' || measure.id.startsWith('feet-direction'),
      usesDirection: measure.kind !== 'depth' && !isSymmetric(measure),
      usesSurface: measure.kind === 'depth',
      // neighbouring postures of a trace are alike: only one posture an event makes independent values
      spread: atEvents,
      instants: atEvents,
    },
    told: (scale) => singleValues(context, at, places, frames, scale, size),
  };
  if (measure.kind === 'angle') return angleReading(context, summed);
  if (measure.kind === 'depth') return depthReading(context, summed);
  return lengthReading(context, measure, summed);
}

function singleValues(
  context: BodyContext,
  at: PosturesAt,
  places: readonly number[],
  frames: readonly number[],
  scale: number,
  size: (place: number) => number,
): Told {
  // a hand's worth of postures is worth listing; a dense trace is looked at as a curve
  if (at.of !== 'events' && places.length > listedPostures)
    return { perCycle: [], singles: spreadOf(size, places, scale) };
  const perCycle = places.map((place, i): CycleValue => {
    const frame = frames[i] as number;
    return { value: scale * size(place), fromFrame: frame, toFrame: frame };
  });
  if (at.of !== 'events' || (at.kind !== 'kick-top' && at.kind !== 'kick-bottom')) return { perCycle };
  const readAt = (i: number): number => perCycle[i]?.value ?? Number.NaN;
  return { perCycle, independent: strokeMeans(context, at.kind, frames, readAt) };
}

function angleReading(context: BodyContext, { id, mean, marks, perTilt, common, told }: Summed): Reading {
  return computedReading(context, id, {
    ...common,
    value: mean,
    unit: '°',
    ownVariance: marks,
    sharedVariance: perTilt ** 2 * context.tiltVariance,
    ...told(1),
  });
}

function depthReading(context: BodyContext, summed: Summed): Reading {
  const { id, values, places, mean, marks, common } = summed;
  const part = unitPart(context, mean);
  const weights = values.ends ? [values.ends.a, values.ends.b] : [];
  const ends =
    weights.reduce((sum, weight) => sum + average(weight, places) ** 2, 0) *
    (context.input.error.scenePointSd * context.transform.perPixel) ** 2;
  const told = summed.told(1);
  // a swimmer who rises or sinks all along does not differ from kick to kick
  const single = told.independent ?? (told.perCycle ?? []).map((one) => one.value);
  return computedReading(context, id, {
    ...common,
    value: mean,
    unit: context.unit,
    ownVariance: marks + part.own,
    sharedVariance: ends + part.shared,
    ...told,
    independent: withoutTrend(single),
    trendTaken: true,
  });
}

/** In percent of the body's length. */
function lengthReading(context: BodyContext, measure: PostureMeasure, summed: Summed): Reading {
  const { id, places, mean, marks, perTilt, common, told } = summed;
  const length = context.bodyLength;
  if (!length) return missingReading(id, { code: 'needs-body-length' });
  const percent = 100 / (length.pixels * context.transform.perPixel);
  const lengthPart = length.variance / length.pixels ** 2;
  const value = percent * (measure.combine === 'root' ? Math.sqrt(Math.max(0, mean)) : mean);
  if (measure.combine === 'mean') {
    return computedReading(context, id, {
      ...common,
      value,
      unit: '%L',
      ownVariance: percent ** 2 * marks + value ** 2 * lengthPart,
      sharedVariance: (percent * perTilt) ** 2 * context.tiltVariance,
      ...told(percent),
    });
  }
  // a squared distance near nothing is spread by the square of its noise, which the slope alone doesn't see
  const noise = meanSd(context, measure) ** 2;
  const spread = Math.sqrt(marks + (2 * (1.7 * noise) ** 2) / (6 * places.length));
  const low = percent * Math.sqrt(Math.max(0, mean - z95 * spread));
  const high = percent * Math.sqrt(Math.max(0, mean) + z95 * spread);
  return computedReading(context, id, {
    ...common,
    value,
    unit: '%L',
    ownVariance: ((high - low) / (2 * z95)) ** 2 + value ** 2 * lengthPart,
    bounds: { low, high },
    ...told(percent),
  });
}

/** Sample standard deviation of single postures, in the reading's unit; null of fewer than two. */
function spreadOf(size: (place: number) => number, places: readonly number[], scale: number): Singles | null {
  const count = places.length;
  if (count < 2) return null;
  let sum = 0;
  for (const place of places) sum += size(place);
  const mean = sum / count;
  let squares = 0;
  for (const place of places) squares += (size(place) - mean) ** 2;
  return { of: 'body-lines', count, sd: Math.abs(scale) * Math.sqrt(squares / (count - 1)) };
}

/** The same whichever way the swimmer goes. */
const isSymmetric = ({ id }: PostureMeasure): boolean => id === 'straightness' || id === 'frontal-thickness';

function missingFor(
  context: BodyContext,
  measure: PostureMeasure,
  count: number,
  at: PosturesAt,
): MissingReason | null {
  const { scene } = context;
  if (measure.kind === 'depth' && !scene.surface) return { code: 'needs-scene', item: 'surface' };
  const travels = measure.kind !== 'depth' && !isSymmetric(measure);
  if (travels && !context.transform.travelKnown) return { code: 'needs-scene', item: 'travel' };
  if (count > 0) return null;
  const postures = context.postures.filter(({ frame }) => isThere(at, frame));
  for (const landmark of measure.needs) {
    const have = postures.filter((p) => p.picture[landmark]).length;
    if (have === 0) return { code: 'needs-landmark', landmark, have, need: 1 };
  }
  const together = postures.some((p) => measure.needs.every((name) => p.picture[name]));
  if (!together) return { code: 'needs-landmark', landmark: measure.needs[0] ?? 'hip', have: 0, need: 1 };
  if (measure.id === 'head-offset')
    return goesOtherWay(context) ? notForward(context) : { code: 'not-for-this-drill' };
  return { code: 'degenerate', what: 'zero-length' };
}

/**
 * Angles on these places, each brought within half a turn of the direction they lie about, so that means and spreads are
 * those of directions. The column itself where none has to be turned.
 */
function turnedTogether(column: Float64Array, places: readonly number[]): Float64Array {
  let [low, high] = [Infinity, -Infinity];
  for (const place of places) {
    const value = column[place] as number;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  // within half a turn of one another nothing can be nearer the other way round
  if (high - low <= 180) return column;
  const middle = circularMean(places.map((place) => column[place] as number));
  if (middle === null) return column;
  const turned = Float64Array.from(column);
  for (const place of places) turned[place] = turnedTo(middle, column[place] as number);
  return turned;
}

/** A mean angle where single ones of its measure lie: a joint's in (−90, 270], a direction's in (−180, 180]. */
const inRange = ({ turnsWithLevel }: PostureMeasure, angle: number): number =>
  turnedTo(turnsWithLevel ? 0 : 90, angle);

function average(column: Float64Array, places: readonly number[]): number {
  let sum = 0;
  for (const place of places) sum += column[place] as number;
  return sum / places.length;
}
