import type { WaveFit } from './fit-wave';
import { lowerRoot } from './lower-root';
import { drawCount, normalDraws } from './normal-draws';
import { waveExtremes } from './wave-extremes';
import { waveWeights } from './wave-value';

/** What of a fitted wave is read over its period, its offset and drift left aside. */
export type SwingOf = 'highest' | 'lowest' | 'range';

/** A swing in the unit of the fit, or of its derivative; never below 0. */
export interface Swing {
  /** Half of all fits to such a swing show more than was seen, half show less; 0 where even none would show as much. */
  readonly value: number;
  /** Share of noise alone that would show more than was seen: 1 where there was less to see than noise ever makes. */
  readonly noiseShowsMore: number;
  /** 95 % interval: `low` is 0 where what was seen could be noise alone. */
  readonly low: number;
  readonly high: number;
}

/** Places of a period looked at, for each harmonic. */
const placesOfHarmonic = 8;

/** Chance that a true swing is larger than its interval or smaller than it, of both together. */
const outside = 0.05;

export interface SwingOptions {
  /** By how much the noise is to be taken larger for the interval, where it was itself estimated. */
  readonly wider?: number;
  /** How many times as large the noise is that lifts extremes: below 1 where some of it is too slow to. */
  readonly quieter?: number;
  /** Chance that the interval of a wave that is none in truth leaves 0 out; less than 0.05 where another error comes beside. */
  readonly chanceAtNothing?: number;
}

/**
 * How large the swing behind a fitted wave is in truth: how far its highest value lies above its mean, its lowest below, or
 * the two from each other. Noise always adds to an extreme, and makes one of nothing, so the interval is no value ± something:
 * it holds every swing to which what was seen is likely enough, and so any true one, 0 too, 95 times in 100. Swings are taken
 * to have the shape that was seen, each harmonic shrunk by the share of its power that is noise. What fits to each would show is
 * told by a fixed set of normal draws.
 *
 * @param covariance of the harmonics' coefficients [a1, b1, a2, …], row by row
 * @param order 0: of the value, 1: of its speed
 * @param options see `SwingOptions`
 * @returns null for a wave without harmonics or movement. Cost: draws × places × (unknowns + 60).
 * @see Neyman 1937, Phil Trans R Soc A 236:333–380 (the construction); Feldman, Cousins 1998, Phys Rev D 57:3873 (both ends
 *   of an interval beside a boundary)
 */
export function swingInterval(
  fit: WaveFit,
  covariance: ArrayLike<number>,
  order: number,
  of: SwingOf,
  { wider = 1, quieter = 1, chanceAtNothing = outside }: SwingOptions = {},
): Swing | null {
  const width = 2 * fit.harmonics;
  if (width === 0) return null;
  const grid = gridOf(fit, order, of === 'lowest' ? -1 : 1);
  const noise = drawnNoise(grid, lowerRoot(covariance, width));
  const both = of === 'range';
  const seen = extent(shapeOn(grid, fit), both);
  if (!(seen > 0)) return null;
  const alone = { shape: new Float64Array(grid.places), noise, places: grid.places, both };
  let squares = 0;
  for (let d = 0; d < drawCount; d++) squares += shownBy(alone, d, 0, 1).value ** 2;
  /** What noise alone shows. */
  const typical = Math.sqrt(squares / drawCount);
  // less than noise shows by itself is read as that much: how little there was says nothing about the truth
  const least = Math.max(seen, wider * typical);
  const swingOf = (like: WaveFit): Swing | null => {
    const shape = shapeOn(grid, like);
    const size = extent(shape, both);
    const extremes = waveExtremes(like, order);
    if (!(size > 0) || !extremes) return null;
    const { highest, lowest } = extremes;
    const whole = both ? highest.value - lowest.value : of === 'highest' ? highest.value : -lowest.value;
    const most = (seen + 8 * wider * typical) / size;
    // beside nothing all of the chance lies on one side: no true swing can be smaller
    const away = (share: number): number => 1 - Math.exp(-(((share * size) / (wider * typical)) ** 2));
    const below = (share: number): number => (outside / 2) * away(share);
    const above = (share: number): number => chanceAtNothing + (outside / 2 - chanceAtNothing) * away(share);
    const swings = { ...alone, shape };
    const known = shownMore(swings, quieter, seen);
    const wide = wider === quieter ? known : shownMore(swings, wider, seen);
    const large = least === seen ? wide : shownMore(swings, wider, least);
    const value = rising((share) => known(share) - 0.5, most);
    const low = rising((share) => wide(share) - above(share), most);
    const high = rising((share) => large(share) - (1 - below(share)), most);
    return {
      noiseShowsMore: known(0),
      value: whole * value,
      low: whole * Math.min(value, low),
      high: whole * Math.max(value, high),
    };
  };
  const quiet = swingOf(withoutNoise(fit, covariance));
  // a shape as uneven as the one seen is lifted less by noise
  const uneven = swingOf(fit);
  if (!quiet || !uneven) return quiet ?? uneven;
  return { ...quiet, low: Math.min(quiet.low, uneven.low), high: Math.max(quiet.high, uneven.high) };
}

/** Places of a period, and how much each coefficient of the harmonics weighs there. */
interface Grid {
  readonly places: number;
  readonly width: number;
  /** By place, then coefficient. */
  readonly weights: Float64Array;
}

function gridOf(fit: WaveFit, order: number, sign: 1 | -1): Grid {
  const width = 2 * fit.harmonics;
  const places = placesOfHarmonic * fit.harmonics;
  const first = fit.hasSlope ? 2 : 1;
  const period = (2 * Math.PI) / fit.angularFrequency;
  const weights = new Float64Array(places * width);
  for (let i = 0; i < places; i++) {
    const here = waveWeights(fit, fit.centre + (i / places) * period, order, false);
    for (let j = 0; j < width; j++) weights[i * width + j] = sign * (here[first + j] as number);
  }
  return { places, width, weights };
}

function shapeOn({ places, width, weights }: Grid, { coefficients }: WaveFit): Float64Array {
  const first = coefficients.length - width;
  const shape = new Float64Array(places);
  for (let i = 0; i < places; i++)
    for (let j = 0; j < width; j++)
      shape[i] =
        (shape[i] as number) + (weights[i * width + j] as number) * (coefficients[first + j] as number);
  return shape;
}

/**
 * The fit with each harmonic shrunk by the share of its power that is noise, so that harmonics that are noise alone make its shape
 * no more uneven; as it is where noise alone may have made it all.
 *
 * @see James, Stein 1961, 4th Berkeley Symp 1:361–379 (from memory)
 */
function withoutNoise(fit: WaveFit, covariance: ArrayLike<number>): WaveFit {
  const width = 2 * fit.harmonics;
  const first = fit.coefficients.length - width;
  const coefficients = Float64Array.from(fit.coefficients);
  let any = false;
  for (let j = 0; j < width; j += 2) {
    const [a, b] = [coefficients[first + j] as number, coefficients[first + j + 1] as number];
    const noise = (covariance[j * width + j] as number) + (covariance[(j + 1) * width + j + 1] as number);
    const kept = Math.max(0, 1 - noise / (a * a + b * b));
    any ||= kept > 0;
    coefficients[first + j] = kept * a;
    coefficients[first + j + 1] = kept * b;
  }
  return any ? { ...fit, coefficients } : fit;
}

function extent(shape: Float64Array, both: boolean): number {
  let [top, bottom] = [-Infinity, Infinity];
  for (const value of shape) {
    if (value > top) top = value;
    if (value < bottom) bottom = value;
  }
  return both ? top - bottom : top;
}

/** Covariance of a fit's harmonics for samples of `sampleVariance`, offset and slope left out, row by row. */
export function swingCovariance(fit: WaveFit, sampleVariance: number): Float64Array {
  const p = fit.coefficients.length;
  const width = 2 * fit.harmonics;
  const first = p - width;
  return Float64Array.from(
    { length: width * width },
    (_, i) =>
      sampleVariance *
      (fit.unitCovariance[(first + Math.floor(i / width)) * p + first + (i % width)] as number),
  );
}

/** By draw and place, what noise alone shows. */
function drawnNoise({ places, width, weights }: Grid, root: Float64Array): Float64Array {
  /** By place, what each independent normal number makes there. */
  const spread = new Float64Array(places * width);
  for (let i = 0; i < places; i++)
    for (let j = 0; j < width; j++)
      for (let k = 0; k <= j; k++)
        spread[i * width + k] =
          (spread[i * width + k] as number) +
          (weights[i * width + j] as number) * (root[j * width + k] as number);
  const draws = normalDraws(width);
  const noise = new Float64Array(drawCount * places);
  // each second row is the mirror image of the one before
  for (let d = 0; d < drawCount; d += 2)
    for (let i = 0; i < places; i++) {
      let sum = 0;
      for (let j = 0; j < width; j++)
        sum += (spread[i * width + j] as number) * (draws[d * width + j] as number);
      noise[d * places + i] = sum;
      noise[(d + 1) * places + i] = -sum;
    }
  return noise;
}

/** A shape seen through each draw of noise. */
interface Swings {
  readonly shape: Float64Array;
  readonly noise: Float64Array;
  readonly places: number;
  /** The range counts, and not the highest value alone. */
  readonly both: boolean;
}

/** The swing that a draw shows of a true one of `share` of the shape, and by how much it grows with the share. */
function shownBy(
  { shape, noise, places, both }: Swings,
  draw: number,
  share: number,
  size: number,
): { readonly value: number; readonly slope: number } {
  let [top, bottom] = [-Infinity, Infinity];
  let [highest, lowest] = [0, 0];
  for (let i = 0, at = draw * places; i < places; i++, at++) {
    const value = share * (shape[i] as number) + size * (noise[at] as number);
    if (value > top) [top, highest] = [value, i];
    if (value < bottom) [bottom, lowest] = [value, i];
  }
  const up = shape[highest] as number;
  return both ? { value: top - bottom, slope: up - (shape[lowest] as number) } : { value: top, slope: up };
}

/**
 * Share of the draws that show more than `than`, as a function of the true swing's share. What one draw shows is made of
 * straight pieces bent upward, so that it is at most `than` from one share up to another: each found by Newton's steps, which
 * come to the very place.
 */
function shownMore(swings: Swings, size: number, than: number): (share: number) => number {
  const from = new Float64Array(drawCount).fill(Infinity);
  const to = new Float64Array(drawCount).fill(-Infinity);
  for (let d = 0; d < drawCount; d++) {
    const at = shownBy(swings, d, 0, size);
    const start = at.value <= than ? 0 : meeting(swings, d, size, than, 0, -1);
    if (start === null) continue;
    from[d] = start;
    to[d] = meeting(swings, d, size, than, 1e6, 1) ?? start;
  }
  return (share) => {
    let within = 0;
    for (let d = 0; d < drawCount; d++)
      if ((from[d] as number) <= share && share <= (to[d] as number)) within += 1;
    return 1 - within / drawCount;
  };
}

/** Share at which a draw comes to show `than`, walked to from where it shows more, up (−1) or down (1); null if it never does. */
function meeting(
  swings: Swings,
  draw: number,
  size: number,
  than: number,
  start: number,
  way: 1 | -1,
): number | null {
  let share = start;
  for (let i = 0; i < 40; i++) {
    const { value, slope } = shownBy(swings, draw, share, size);
    if (!(value > than)) return share;
    if (!(way * slope > 0)) return null;
    const next = share - (value - than) / slope;
    if (next === share) return share;
    share = next;
  }
  return share;
}

/** Where a function that rises with the share comes to 0; 0 where it begins above. */
function rising(of: (share: number) => number, most: number): number {
  if (of(0) >= 0) return 0;
  let [low, high] = [0, most];
  for (let i = 0; i < 14; i++) {
    const middle = (low + high) / 2;
    if (of(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
