import { heightAboveSurface } from '../../../scene/surface-line';
import type { BodyContext } from '../context/body-context';
import type { BodyGeometry } from '../context/body-geometry';
import { pointAt } from '../points/landmark-column';
import { type PostureError, postureError } from './posture-error';
import type { PostureMeasure, PosturePoints, PostureSituation } from './posture-measure';
import type { TimedPosture } from '../points/timed-posture';
import { keptWith } from '../../../units/kept-with';

/** A measure on all postures of a swim, column by column. */
export interface PostureValues {
  /** One for each posture of the geometry, in its order; NaN where the measure isn't defined. */
  readonly values: Float64Array;
  /** Places of the postures on which it is defined, rising. */
  readonly defined: readonly number[];
  /** For depths: how much the two ends of the surface line weigh. */
  readonly ends: { readonly a: Float64Array; readonly b: Float64Array } | null;
  /** Errors worked out so far, by place. */
  readonly errors: Map<number, PostureError>;
}

const kept = keptWith((_: BodyGeometry) => new Map<string, PostureValues>());

/** Values of a measure on every posture on which it is defined; made once for one geometry, whatever events do. */
export function postureValues(context: BodyContext, measure: PostureMeasure): PostureValues {
  const known = kept(context.geometry);
  const key = `${measure.id} ${context.belly}`;
  const found = known.get(key);
  if (found) return found;
  const made = measure.kind === 'depth' ? depths(context, measure) : readings(context, measure);
  known.set(key, made);
  return made;
}

/** A point that is moved from posture to posture while a measure is read: none is made for each. */
interface MovedPoint {
  x: number;
  y: number;
}

function readings(context: BodyContext, measure: PostureMeasure): PostureValues {
  const { postures, columns } = context;
  const values = new Float64Array(postures.length).fill(Number.NaN);
  const defined: number[] = [];
  const marked = situationOn(context, measure);
  const points: PosturePoints = {};
  const parts = measure.needs.map((name) => {
    const point: MovedPoint = { x: 0, y: 0 };
    points[name] = point;
    return { point, ...columns[name] };
  });
  const also = measure.alsoReads ?? [];
  for (let i = 0; i < postures.length; i++) {
    let whole = true;
    for (const { point, x, y } of parts) {
      point.x = x[i] as number;
      point.y = y[i] as number;
      if (Number.isNaN(point.x)) whole = false;
    }
    if (!whole) continue;
    for (const name of also) points[name] = pointAt(columns[name], i);
    const posture = postures[i] as TimedPosture;
    const situation = anyFollowed(posture, measure) ? situationOn(context, measure, posture) : marked;
    const value = measure.read(points, situation);
    if (value === null || !Number.isFinite(value)) continue;
    values[i] = value;
    defined.push(i);
  }
  return { values, defined, ends: null, errors: new Map() };
}

/** The landmarks of one posture that a measure reads, in the pool plane. */
function pointsAt(
  { columns }: BodyContext,
  { needs, alsoReads }: PostureMeasure,
  place: number,
): PosturePoints {
  const points: PosturePoints = {};
  for (const name of needs) points[name] = pointAt(columns[name], place);
  for (const name of alsoReads ?? []) points[name] = pointAt(columns[name], place);
  return points;
}

function depths(context: BodyContext, measure: PostureMeasure): PostureValues {
  const { postures, scene, transform } = context;
  const values = new Float64Array(postures.length).fill(Number.NaN);
  const ends = { a: new Float64Array(postures.length), b: new Float64Array(postures.length) };
  const defined: number[] = [];
  const name = measure.needs[0] ?? 'hip';
  const sign = measure.id === 'depth-hip' ? -1 : 1;
  for (let i = 0; i < postures.length; i++) {
    const point = postures[i]?.picture[name];
    const height = point && heightAboveSurface(scene, point);
    if (!height) continue;
    values[i] = sign * height.pixels * transform.perPixel;
    ends.a[i] = height.weightA;
    ends.b[i] = height.weightB;
    defined.push(i);
  }
  return { values, defined, ends, errors: new Map() };
}

function anyFollowed({ followed }: TimedPosture, measure: PostureMeasure): boolean {
  return followed.length > 0 && measure.needs.some((name) => followed.includes(name));
}

/** Root mean square error of the points a measure needs, marked or as they are on one posture; pool units. */
export function meanSd(context: BodyContext, measure: PostureMeasure, on?: TimedPosture): number {
  const square = measure.needs.reduce((sum, name) => sum + context.landmarkSd(name, on) ** 2, 0);
  return Math.sqrt(square / measure.needs.length);
}

function situationOn(context: BodyContext, measure: PostureMeasure, on?: TimedPosture): PostureSituation {
  return { belly: context.belly, sd: meanSd(context, measure, on) };
}

/** Error is worked out on at most this many postures, spread evenly, and taken to be alike on the rest. Our default. */
const errorPostures = 24;

function errorAt(
  context: BodyContext,
  measure: PostureMeasure,
  { errors }: PostureValues,
  place: number,
  posture: TimedPosture,
): PostureError {
  const known = errors.get(place);
  if (known) return known;
  const on = anyFollowed(posture, measure) ? posture : undefined;
  const found =
    measure.kind === 'depth'
      ? { variance: context.landmarkSd(measure.needs[0] ?? 'hip', on) ** 2, perTilt: 0 }
      : postureError(measure, pointsAt(context, measure, place), situationOn(context, measure, on), (name) =>
          context.landmarkSd(name, on),
        );
  errors.set(place, found);
  return found;
}

/**
 * Mean error of a measure over the postures at these places. Followed postures of one run are off together, so that
 * their variance counts grown where `manyTogether` are averaged.
 */
export function meanError(
  context: BodyContext,
  measure: PostureMeasure,
  values: PostureValues,
  places: readonly number[],
  manyTogether: boolean,
): PostureError {
  const stride = Math.max(1, Math.floor(places.length / errorPostures));
  let variance = 0;
  let perTilt = 0;
  let count = 0;
  for (let i = 0; i < places.length; i += stride) {
    const place = places[i];
    const posture = place === undefined ? undefined : context.postures[place];
    if (place === undefined || !posture) continue;
    const error = errorAt(context, measure, values, place, posture);
    const grown = manyTogether && anyFollowed(posture, measure);
    variance += error.variance * (grown ? context.followedSpread.slow : 1);
    perTilt += error.perTilt;
    count += 1;
  }
  return { variance: variance / count, perTilt: perTilt / count };
}
