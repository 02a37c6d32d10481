import type { LandmarkName } from '../marks/landmark';
import { addBanded, bandedMatrix, factorBanded, invertBanded, solveBanded } from './banded-solver';
import { addExpected, addLengths, type Expected, type ExpectedLength } from './body-priors';
import type { GreyLevel } from './grey-pyramid';
import { addJerk } from './jerk-prior';
import type { Limb } from './limb';
import { addLooks, type Residuals, type WeighedTemplate } from './limb-looks';

/** One picture of a stretch that is laid as a whole. Points in pixels of its first level. */
export interface StretchPicture {
  /** Real seconds. */
  readonly time: number;
  readonly pyramid: readonly GreyLevel[];
  readonly templates: readonly WeighedTemplate[];
  readonly lengths: readonly ExpectedLength[];
  /** Marks, and loosely what is not between marks. */
  readonly pinned: ReadonlyMap<LandmarkName, Expected>;
  /** Where its first pixel lies in still water: the crop's place less what the camera moved. */
  readonly originX: number;
  readonly originY: number;
}

export interface LaidStretch {
  /** x and y of each name in turn, picture by picture, in each picture's own pixels. */
  readonly places: Float64Array;
  /** Variance of one axis, the larger of the two directions, px², by picture and name. */
  readonly variances: Float64Array;
  /** By picture: root mean square of what each limb's look could not explain, share of the look's own contrast. */
  readonly residuals: readonly ReadonlyMap<Limb, number>[];
}

export interface StretchRound {
  readonly level: number;
  readonly rounds: number;
}

/** A limb that looks this unlike itself counts half: something else lies over it. Set on the sample clips. */
const strangeResidual = 0.6;
/** Looks of neighbouring pictures err alike: each counts this much of what it would alone. Set on the sample clips. */
const alikeShare = 0.3;

/**
 * Lays the bodies of many pictures at once: least squares of how far limbs are from their marked looks in every picture,
 * how long they should look, where marks are, and how a body moves (`jerkSd`, the usual change of acceleration of each
 * landmark, px/s³). Where a limb is hidden, blurred or looks like the water behind, its neighbours in time and along the
 * body carry it; a limb seen along its own direction only is held in that direction. Gauss–Newton from `start`.
 */
export function layTogether(
  pictures: readonly StretchPicture[],
  names: readonly LandmarkName[],
  start: Float64Array,
  jerkSd: Readonly<Record<LandmarkName, number>>,
  plan: readonly StretchRound[],
): LaidStretch {
  const width = 2 * names.length;
  const index = new Map(names.map((name, i) => [name, i]));
  const size = pictures.length * width;
  const band = Math.min(size - 1, 3 * width);
  const places = Float64Array.from(start);
  const looks = new Float64Array(width * width);
  const looksGradient = new Float64Array(width);
  const priors = new Float64Array(width * width);
  const priorsGradient = new Float64Array(width);
  let trust: readonly ReadonlyMap<Limb, number>[] = pictures.map(() => new Map());
  let residuals: readonly ReadonlyMap<Limb, number>[] = trust;
  let variances: Float64Array = new Float64Array(pictures.length * names.length);
  const lastLevel = plan.length - 1;
  for (const [p, { level, rounds }] of plan.entries()) {
    for (let round = 0; round < rounds; round++) {
      const matrix = bandedMatrix(size, band);
      const gradient = new Float64Array(size);
      const seen: ReadonlyMap<Limb, number>[] = [];
      pictures.forEach((picture, i) => {
        const state = places.subarray(i * width, (i + 1) * width);
        for (const each of [looks, looksGradient, priors, priorsGradient]) each.fill(0);
        addExpected(names, picture.pinned, state, priors, priorsGradient);
        addLengths(picture.lengths, index, state, priors, priorsGradient);
        const at = picture.pyramid[level];
        const weighed = picture.templates.map((each) => ({
          ...each,
          weight: each.weight * alikeShare * trustOf(trust[i]?.get(each.template.limb)),
        }));
        const own: Residuals = at
          ? addLooks(at, level, weighed, index, state, looks, looksGradient)
          : new Map();
        seen.push(new Map([...own].map(([limb, r]) => [limb, Math.sqrt(r.squares / r.weight)])));
        const from = i * width;
        for (let a = 0; a < width; a++) {
          gradient[from + a] = (looksGradient[a] as number) + (priorsGradient[a] as number);
          for (let b = 0; b <= a; b++)
            addBanded(
              matrix,
              from + a,
              from + b,
              (looks[a * width + b] as number) + (priors[a * width + b] as number),
            );
        }
      });
      residuals = seen;
      trust = seen;
      addJerk(matrix, gradient, pictures, places, names, jerkSd);
      const factor = factorBanded(matrix);
      if (!factor) break;
      const last = p === lastLevel && round === rounds - 1;
      if (last) variances = spreadOf(invertBanded(factor), pictures.length, names.length);
      const step = solveBanded(factor, gradient);
      let largest = 0;
      // no point goes farther in one round than its level can tell
      const most = 6 * 2 ** level;
      for (let k = 0; k < size; k++) {
        const own = Math.max(-most, Math.min(most, step[k] as number));
        places[k] = (places[k] as number) - own;
        largest = Math.max(largest, Math.abs(own));
      }
      if (!last && p !== lastLevel && largest < 0.05 * 2 ** level) break;
    }
  }
  return { places, variances, residuals };
}

const trustOf = (residual: number | undefined): number =>
  residual === undefined ? 1 : 1 / (1 + (residual / strangeResidual) ** 4);

/** The variance along each landmark's worse direction. */
function spreadOf(inverse: ReturnType<typeof invertBanded>, pictures: number, names: number): Float64Array {
  const { band, values } = inverse;
  const wide = band + 1;
  const spread = new Float64Array(pictures * names);
  for (let k = 0; k < spread.length; k++) {
    const x = 2 * k;
    const xx = values[x * wide + band] as number;
    const yy = values[(x + 1) * wide + band] as number;
    const xy = values[(x + 1) * wide + band - 1] as number;
    spread[k] = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  }
  return spread;
}
