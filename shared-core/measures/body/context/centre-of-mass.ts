import type { LandmarkName } from '../../../marks/landmark';
import type { BodyContext } from './body-context';
import type { BodyGeometry } from './body-geometry';
import type { FollowedSamples, LandmarkTrace } from '../points/landmark-trace';

export type BodyTable = 'male' | 'female' | 'mean';

interface Segment {
  readonly name: string;
  readonly sides: 1 | 2;
  readonly mass: readonly [male: number, female: number];
  /** Centre of mass from the first end, % of the segment. */
  readonly centre: readonly [male: number, female: number];
}

/** de Leva 1996, J Biomech 29:1223–1230, Table 4. Young adults. */
const table = {
  head: { name: 'head', sides: 1, mass: [6.94, 6.68], centre: [50.02, 48.41] },
  trunk: { name: 'trunk', sides: 1, mass: [43.46, 42.57], centre: [43.1, 37.82] },
  upperArm: { name: 'upper arm', sides: 2, mass: [2.71, 2.55], centre: [57.72, 57.54] },
  forearm: { name: 'forearm', sides: 2, mass: [1.62, 1.38], centre: [45.74, 45.59] },
  hand: { name: 'hand', sides: 2, mass: [0.61, 0.56], centre: [36.24, 34.27] },
  thigh: { name: 'thigh', sides: 2, mass: [14.16, 14.78], centre: [40.95, 36.12] },
  shank: { name: 'shank', sides: 2, mass: [4.33, 4.81], centre: [43.95, 43.52] },
  foot: { name: 'foot', sides: 2, mass: [1.37, 1.29], centre: [44.15, 40.14] },
} satisfies Record<string, Segment>;
type SegmentName = keyof typeof table;

const pick = (pair: readonly [number, number], sex: BodyTable): number =>
  sex === 'male' ? pair[0] : sex === 'female' ? pair[1] : (pair[0] + pair[1]) / 2;

/** Sum of all segments of the printed table, both sides, % of body mass: rounding leaves it a little off 100. */
export function segmentSum(sex: BodyTable): number {
  return Object.values(table).reduce((sum, s) => sum + s.sides * pick(s.mass, sex), 0);
}

/** Share of whole-body mass of a segment, both sides together; the printed table's sum is divided out. */
function massShare(name: SegmentName, sex: BodyTable): number {
  const segment = table[name];
  return (segment.sides * pick(segment.mass, sex)) / segmentSum(sex);
}

/** Where the ends of the table's segments lie, along any one axis, in any unit. */
export interface SegmentEnds {
  readonly head: readonly [vertex: number, c7: number];
  readonly trunk: readonly [shoulder: number, hip: number];
  readonly upperArm: readonly [shoulder: number, elbow: number];
  readonly forearm: readonly [elbow: number, wrist: number];
  readonly hand: readonly [wrist: number, fingertip: number];
  readonly thigh: readonly [hip: number, knee: number];
  readonly shank: readonly [knee: number, ankle: number];
  readonly foot: readonly [heel: number, toe: number];
}

/** Whole-body centre of mass along one axis, from the ends of all segments. @see de Leva 1996, Table 4 */
export function centreOfMassFromSegments(ends: SegmentEnds, sex: BodyTable): number {
  let sum = 0;
  for (const name of Object.keys(table) as SegmentName[]) {
    const [from, to] = ends[name];
    sum += massShare(name, sex) * (from + (pick(table[name].centre, sex) / 100) * (to - from));
  }
  return sum;
}

/** How much each landmark weighs in the centre of mass; the weights sum to 1. */
export type CentreWeights = Readonly<Partial<Record<LandmarkName, number>>>;

/**
 * Weights of the nine landmarks in the whole-body centre of mass. They hold no vertex, C7 or heel: the head's centre
 * is taken at the ear, the foot's on the ankle–toe line. Both arms are taken to move as the marked one, as in
 * butterfly. `mean` averages the women's and men's tables.
 */
export function centreWeights(sex: BodyTable): CentreWeights {
  const weights: Partial<Record<LandmarkName, number>> = { ear: massShare('head', sex) };
  const add = (name: SegmentName, from: LandmarkName, to: LandmarkName): void => {
    const share = massShare(name, sex);
    const along = pick(table[name].centre, sex) / 100;
    weights[from] = (weights[from] ?? 0) + share * (1 - along);
    weights[to] = (weights[to] ?? 0) + share * along;
  };
  add('trunk', 'shoulder', 'hip');
  add('upperArm', 'shoulder', 'elbow');
  add('forearm', 'elbow', 'wrist');
  add('hand', 'wrist', 'fingertip');
  add('thigh', 'hip', 'knee');
  add('shank', 'knee', 'ankle');
  add('foot', 'ankle', 'toe');
  return weights;
}

/** The body table of the swim's swimmer; the mean of both when it isn't recorded. */
function bodyTableOf(context: BodyContext): BodyTable {
  return context.input.swimmer?.bodyTable ?? 'mean';
}

/**
 * What is said of everything read from the centre of mass: the body tables are of young adults, so under 18 in the year of
 * the swim it is approximate. Nothing where the birth year isn't known.
 */
export function centreOfMassNotes({ input }: BodyContext): readonly 'approximate-for-children'[] {
  const born = input.swimmer?.birthYear;
  const child = typeof born === 'number' && Number(input.swim.card.date.slice(0, 4)) - born < 18;
  return child ? ['approximate-for-children'] : [];
}

const kept = new WeakMap<BodyGeometry, LandmarkTrace>();

/** The centre of mass over the postures on which all nine landmarks are marked. */
export function centreOfMassTrace(context: BodyContext): LandmarkTrace {
  const known = kept.get(context.geometry);
  if (known) return known;
  const weights = Object.entries(centreWeights(bodyTableOf(context))) as [LandmarkName, number][];
  const frames: number[] = [];
  const times: number[] = [];
  const x: number[] = [];
  const y: number[] = [];
  const followedWeight: number[] = [];
  const parts = weights.map(([name, weight]) => ({ weight, ...context.columns[name] }));
  let last = -Infinity;
  for (const { frame, time, place, followed, adrift } of context.postures) {
    let sumX = 0;
    let sumY = 0;
    for (const part of parts) {
      sumX += part.weight * (part.x[place] as number);
      sumY += part.weight * (part.y[place] as number);
    }
    // a landmark that isn't known leaves no sum
    if (Number.isNaN(sumX) || adrift || time <= last) continue;
    last = time;
    frames.push(frame);
    times.push(time);
    x.push(sumX);
    y.push(sumY);
    followedWeight.push(
      followed.length === 0 ? 0 : weights.reduce((sum, [n, w]) => sum + (followed.includes(n) ? w : 0), 0),
    );
  }
  const spread = (sdOf: (name: LandmarkName) => number): number =>
    Math.sqrt(weights.reduce((sum, [name, w]) => sum + (w * sdOf(name)) ** 2, 0));
  const sway = context.camera.state === 'carried' ? context.camera.sd * context.transform.perPixel : 0;
  const sd = Math.hypot(
    spread((name) => context.landmarkSd(name)),
    sway,
  );
  // where every posture is whole, the hip's row of times is the same one, and designs can be shared
  const hip = context.trace('hip');
  const whole = hip.frames.length === frames.length;
  const trace = {
    frames: whole ? hip.frames : frames,
    times: whole ? hip.times : times,
    x,
    y,
    sd,
    followed: followedWeight.some((share) => share > 0)
      ? followedCentre(context, followedWeight, sd, spread)
      : null,
  };
  kept.set(context.geometry, trace);
  return trace;
}

/** A centre of mass with any followed point in it counts as followed, with all nine points' followed error. */
function followedCentre(
  context: BodyContext,
  shares: readonly number[],
  markedSd: number,
  spread: (sdOf: (name: LandmarkName) => number) => number,
): FollowedSamples {
  const { followedSd, transform, followedSpread } = context;
  const sd = spread((name) => followedSd[name] * transform.perPixel);
  const is = shares.map((share) => share > 0);
  const weigh = (grown: number): readonly number[] =>
    is.map((followed) => (followed ? (markedSd / sd) ** 2 / grown : 1));
  return { is, sd, waveWeights: weigh(followedSpread.wave), slowWeights: weigh(followedSpread.slow) };
}
