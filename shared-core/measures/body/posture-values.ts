import { heightAboveSurface } from '../../scene/surface-line';
import type { BodyContext } from './body-context';
import type { BodyGeometry, TimedPosture } from './body-geometry';
import { type PostureError, postureError } from './posture-error';
import type { PostureMeasure, PostureSituation } from './posture-measure';

/** A measure's value on one posture. */
export interface PostureValue {
  readonly posture: TimedPosture;
  readonly value: number;
  /** For depths: how much the two ends of the surface line weigh. */
  readonly weightA: number;
  readonly weightB: number;
  /** Whether the machine followed any point it needs. */
  readonly followed: boolean;
}

/** A measure on all postures, by time and by frame. */
export interface PostureValues {
  readonly all: readonly PostureValue[];
  readonly byFrame: ReadonlyMap<number, PostureValue>;
}

const kept = new WeakMap<BodyGeometry, Map<string, PostureValues>>();

/** Values of a measure on every posture on which it is defined; made once for one geometry, whatever events do. */
export function postureValues(context: BodyContext, measure: PostureMeasure): PostureValues {
  const known = kept.get(context.geometry) ?? new Map<string, PostureValues>();
  kept.set(context.geometry, known);
  const key = `${measure.id} ${context.belly}`;
  const found = known.get(key);
  if (found) return found;
  const all = measure.kind === 'depth' ? depths(context, measure) : readings(context, measure);
  const made = { all, byFrame: new Map(all.map((each) => [each.posture.frame, each])) };
  known.set(key, made);
  return made;
}

function readings(context: BodyContext, measure: PostureMeasure): readonly PostureValue[] {
  const out: PostureValue[] = [];
  const marked = situationOn(context, measure);
  for (const posture of context.postures) {
    const { points } = posture;
    if (!measure.needs.every((name) => points[name])) continue;
    const followed = anyFollowed(posture, measure);
    const value = measure.read(points, followed ? situationOn(context, measure, posture) : marked);
    if (value !== null && Number.isFinite(value)) {
      out.push({ posture, value, weightA: 0, weightB: 0, followed });
    }
  }
  return out;
}

function depths(context: BodyContext, measure: PostureMeasure): readonly PostureValue[] {
  const name = measure.needs[0];
  if (!name) return [];
  const sign = measure.id === 'depth-hip' ? -1 : 1;
  return context.postures.flatMap((posture): PostureValue[] => {
    const point = posture.picture[name];
    const height = point && heightAboveSurface(context.scene, point);
    if (!height) return [];
    const value = sign * height.pixels * context.transform.perPixel;
    const { weightA, weightB } = height;
    return [{ posture, value, weightA, weightB, followed: posture.followed.includes(name) }];
  });
}

const anyFollowed = (posture: TimedPosture, measure: PostureMeasure): boolean =>
  posture.followed.length > 0 && measure.needs.some((name) => posture.followed.includes(name));

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

const errors = new WeakMap<PostureValue, PostureError>();

function errorOf(context: BodyContext, measure: PostureMeasure, of: PostureValue): PostureError {
  const known = errors.get(of);
  if (known) return known;
  const { posture, followed } = of;
  const on = followed ? posture : undefined;
  const found =
    measure.kind === 'depth'
      ? { variance: context.landmarkSd(measure.needs[0] ?? 'hip', on) ** 2, perTilt: 0 }
      : postureError(measure, posture.points, situationOn(context, measure, on), (name) =>
          context.landmarkSd(name, on),
        );
  errors.set(of, found);
  return found;
}

/**
 * Mean error of a measure over postures. Followed postures of one run are off together, so that their variance counts
 * grown where `manyTogether` are averaged.
 */
export function meanError(
  context: BodyContext,
  measure: PostureMeasure,
  values: readonly PostureValue[],
  manyTogether: boolean,
): PostureError {
  const stride = Math.max(1, Math.floor(values.length / errorPostures));
  let variance = 0;
  let perTilt = 0;
  let count = 0;
  for (let i = 0; i < values.length; i += stride) {
    const value = values[i];
    if (!value) continue;
    const error = errorOf(context, measure, value);
    variance += error.variance * (manyTogether && value.followed ? context.followedSpread.slow : 1);
    perTilt += error.perTilt;
    count += 1;
  }
  return { variance: variance / count, perTilt: perTilt / count };
}
