import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/brand';
import type { GreyLevel } from './grey-pyramid';
import type { Limb } from './limb';
import { levelOf, type LimbTemplate, samplesMost } from './limb-template';
import { solveSymmetric } from './solve-symmetric';

/** How a limb looked on a marked frame, and how much that look counts now. */
export interface WeighedTemplate {
  readonly template: LimbTemplate;
  readonly weight: number;
}

/** Where a landmark is thought to be before the picture is looked at; pixels, standard deviation of one axis. */
export interface Expected {
  readonly at: Point;
  readonly sd: number;
}

/** How long a limb should look, pixels. */
export interface ExpectedLength {
  readonly from: LandmarkName;
  readonly to: LandmarkName;
  readonly length: number;
  readonly sd: number;
}

export interface AlignedBody {
  readonly points: ReadonlyMap<LandmarkName, Point>;
  /** Variance of one axis, the larger of the two directions, px². */
  readonly variances: ReadonlyMap<LandmarkName, number>;
  /** Root mean square of what each limb's look could not explain, grey levels. */
  readonly residuals: ReadonlyMap<Limb, number>;
}

/** Grey levels by which a limb looks different from itself (moving light, noise, shading), and their common share. */
const greySd = 9;
/** Neighbouring samples are not independent: this share of them counts. Our default. */
const independentShare = 0.08;
const roundsALevel = 6;
/** A difference of two and a half usual ones counts half. */
const softness = 1 / (2.5 * greySd) ** 2;

type Residuals = ReadonlyMap<Limb, { readonly squares: number; readonly weight: number }>;

/** Grey and its slopes at one limb's samples; used and left again within one call. */
const scratch = {
  now: new Float32Array(samplesMost),
  x: new Float32Array(samplesMost),
  y: new Float32Array(samplesMost),
};

/**
 * Lays the body's landmarks on a picture so that every limb looks as it did where it was marked: least squares of grey
 * differences over all limbs at once (Gauss–Newton from coarse to fine, differences beyond a few grey steps weighed
 * down), held by where each landmark is expected and by how long each limb should look. A limb's brightness and
 * contrast may change. Points in pixels of the first level, pixel centres at whole numbers.
 */
export function alignBody(
  pyramid: readonly GreyLevel[],
  templates: readonly WeighedTemplate[],
  expected: ReadonlyMap<LandmarkName, Expected>,
  lengths: readonly ExpectedLength[],
): AlignedBody {
  const names = [...expected.keys()];
  const index = new Map(names.map((name, i) => [name, i]));
  const size = 2 * names.length;
  const state = new Float64Array(size);
  names.forEach((name, i) => {
    const at = expected.get(name)?.at;
    state[2 * i] = at?.x ?? 0;
    state[2 * i + 1] = at?.y ?? 0;
  });
  const hessian = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  let residuals: Residuals = new Map();
  for (let level = pyramid.length - 1; level >= 0; level--) {
    const picture = pyramid[level];
    if (!picture) continue;
    for (let round = 0; round < roundsALevel; round++) {
      hessian.fill(0);
      gradient.fill(0);
      addExpected(names, expected, state, hessian, gradient);
      addLengths(lengths, index, state, hessian, gradient);
      residuals = addLooks(picture, level, templates, index, state, hessian, gradient);
      const step = solveSymmetric(hessian, gradient, size);
      if (!step) break;
      let largest = 0;
      for (let i = 0; i < size; i++) {
        state[i] = (state[i] ?? 0) - (step[i] ?? 0);
        largest = Math.max(largest, Math.abs(step[i] ?? 0));
      }
      if (largest < 0.02 * 2 ** level) break;
    }
  }
  return {
    points: new Map(names.map((name, i) => [name, { x: state[2 * i] ?? 0, y: state[2 * i + 1] ?? 0 }])),
    variances: spreadOf(names, hessian, size),
    residuals: new Map(
      [...residuals].map(([limb, { squares, weight }]) => [limb, Math.sqrt(squares / weight)]),
    ),
  };
}

function addExpected(
  names: readonly LandmarkName[],
  expected: ReadonlyMap<LandmarkName, Expected>,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  const size = 2 * names.length;
  names.forEach((name, i) => {
    const prior = expected.get(name);
    if (!prior) return;
    const weight = 1 / prior.sd ** 2;
    for (const [axis, at] of [prior.at.x, prior.at.y].entries()) {
      const k = 2 * i + axis;
      hessian[k * size + k] = (hessian[k * size + k] ?? 0) + weight;
      gradient[k] = (gradient[k] ?? 0) + weight * ((state[k] ?? 0) - at);
    }
  });
}

function addLengths(
  lengths: readonly ExpectedLength[],
  index: ReadonlyMap<LandmarkName, number>,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  for (const { from, to, length, sd } of lengths) {
    const a = index.get(from);
    const b = index.get(to);
    if (a === undefined || b === undefined) continue;
    const dx = (state[2 * b] ?? 0) - (state[2 * a] ?? 0);
    const dy = (state[2 * b + 1] ?? 0) - (state[2 * a + 1] ?? 0);
    const now = Math.hypot(dx, dy);
    if (now < 1e-6) continue;
    addRow(
      [2 * a, 2 * a + 1, 2 * b, 2 * b + 1],
      [-dx / now, -dy / now, dx / now, dy / now],
      now - length,
      1 / sd ** 2,
      hessian,
      gradient,
    );
  }
}

/** Adds one weighed residual with its slopes. */
function addRow(
  places: readonly number[],
  slopes: readonly number[],
  value: number,
  weight: number,
  hessian: Float64Array,
  gradient: Float64Array,
): void {
  const size = gradient.length;
  for (let i = 0; i < places.length; i++) {
    const p = places[i] ?? 0;
    const s = weight * (slopes[i] ?? 0);
    gradient[p] = (gradient[p] ?? 0) + s * value;
    for (let j = 0; j < places.length; j++) {
      const q = p * size + (places[j] ?? 0);
      hessian[q] = (hessian[q] ?? 0) + s * (slopes[j] ?? 0);
    }
  }
}

function addLooks(
  picture: GreyLevel,
  level: number,
  templates: readonly WeighedTemplate[],
  index: ReadonlyMap<LandmarkName, number>,
  state: Float64Array,
  hessian: Float64Array,
  gradient: Float64Array,
): Residuals {
  const scale = 2 ** level;
  const residuals = new Map<Limb, { readonly squares: number; readonly weight: number }>();
  const places = [0, 0, 0, 0];
  // products of one limb's slopes, summed before they go into the whole
  const block = new Float64Array(14);
  for (const { template, weight } of templates) {
    const a = index.get(template.limb.from);
    const b = index.get(template.limb.to);
    const look = template.levels[level];
    if (a === undefined || b === undefined || !look || weight <= 0) continue;
    const ax = levelOf(state[2 * a] ?? 0, level);
    const ay = levelOf(state[2 * a + 1] ?? 0, level);
    const dx = levelOf(state[2 * b] ?? 0, level) - ax;
    const dy = levelOf(state[2 * b + 1] ?? 0, level) - ay;
    const length = Math.hypot(dx, dy);
    if (length < 1) continue;
    const ux = dx / length;
    const uy = dy / length;
    const count = look.grey.length;
    const { width, height, grey } = picture;
    const rightmost = width - 1.001;
    const lowest = height - 1.001;
    let sumNow = 0;
    let sumThen = 0;
    let squareNow = 0;
    let squareThen = 0;
    for (let k = 0; k < count; k++) {
      const t = look.along[k] ?? 0;
      const v = look.across[k] ?? 0;
      const x = Math.max(0, Math.min(rightmost, ax + t * dx - v * uy));
      const y = Math.max(0, Math.min(lowest, ay + t * dy + v * ux));
      const left = x | 0;
      const top = y | 0;
      const fx = x - left;
      const fy = y - top;
      const at = top * width + left;
      const p = grey[at] ?? 0;
      const across = (grey[at + 1] ?? 0) - p;
      const down = (grey[at + width] ?? 0) - p;
      const twist = (grey[at + width + 1] ?? 0) - p - across - down;
      const g = p + fx * across + fy * (down + fx * twist);
      const then = look.grey[k] ?? 0;
      scratch.now[k] = g;
      scratch.x[k] = across + fy * twist;
      scratch.y[k] = down + fx * twist;
      sumNow += g;
      sumThen += then;
      squareNow += g * g;
      squareThen += then * then;
    }
    const meanNow = sumNow / count;
    const meanThen = sumThen / count;
    const spreadNow = Math.sqrt(Math.max(1, squareNow / count - meanNow * meanNow));
    const spreadThen = Math.sqrt(Math.max(1, squareThen / count - meanThen * meanThen));
    const gain = Math.max(0.6, Math.min(1.6, spreadThen / spreadNow));
    const slope = gain / scale;
    block.fill(0);
    const share = (weight * independentShare) / (greySd * greySd);
    let squares = 0;
    for (let k = 0; k < count; k++) {
      const t = look.along[k] ?? 0;
      const v = look.across[k] ?? 0;
      const off = gain * ((scratch.now[k] ?? 0) - meanNow) - ((look.grey[k] ?? 0) - meanThen);
      const w = share / (1 + off * off * softness);
      squares += off * off;
      const gx = slope * (scratch.x[k] ?? 0);
      const gy = slope * (scratch.y[k] ?? 0);
      // the strip turns with its ends: δx = (1−t) δA + t δB − v d̂ (n·(δB−δA))/|d|, n = (−uy, ux)
      const turn = (v * (gx * ux + gy * uy)) / length;
      const bx = t * gx + turn * uy;
      const by = t * gy - turn * ux;
      const fx = gx - bx;
      const fy = gy - by;
      const s0 = w * fx;
      const s1 = w * fy;
      const s2 = w * bx;
      const s3 = w * by;
      block[0] = (block[0] ?? 0) + s0 * fx;
      block[1] = (block[1] ?? 0) + s0 * fy;
      block[2] = (block[2] ?? 0) + s0 * bx;
      block[3] = (block[3] ?? 0) + s0 * by;
      block[4] = (block[4] ?? 0) + s1 * fy;
      block[5] = (block[5] ?? 0) + s1 * bx;
      block[6] = (block[6] ?? 0) + s1 * by;
      block[7] = (block[7] ?? 0) + s2 * bx;
      block[8] = (block[8] ?? 0) + s2 * by;
      block[9] = (block[9] ?? 0) + s3 * by;
      block[10] = (block[10] ?? 0) + s0 * off;
      block[11] = (block[11] ?? 0) + s1 * off;
      block[12] = (block[12] ?? 0) + s2 * off;
      block[13] = (block[13] ?? 0) + s3 * off;
    }
    const kept = residuals.get(template.limb);
    residuals.set(template.limb, {
      squares: (kept?.squares ?? 0) + (weight * squares) / count,
      weight: (kept?.weight ?? 0) + weight,
    });
    places[0] = 2 * a;
    places[1] = 2 * a + 1;
    places[2] = 2 * b;
    places[3] = 2 * b + 1;
    let k = 0;
    const size = gradient.length;
    for (let i = 0; i < 4; i++) {
      const p = places[i] ?? 0;
      gradient[p] = (gradient[p] ?? 0) + (block[10 + i] ?? 0);
      for (let j = i; j < 4; j++, k++) {
        const q = places[j] ?? 0;
        const value = block[k] ?? 0;
        hessian[p * size + q] = (hessian[p * size + q] ?? 0) + value;
        if (p !== q) hessian[q * size + p] = (hessian[q * size + p] ?? 0) + value;
      }
    }
  }
  return residuals;
}

/** Variance of each landmark along its worse direction, from the inverse of the curvature. */
function spreadOf(
  names: readonly LandmarkName[],
  hessian: Float64Array,
  size: number,
): ReadonlyMap<LandmarkName, number> {
  const spread = new Map<LandmarkName, number>();
  names.forEach((name, i) => {
    const column = (axis: number): Float64Array | null => {
      const unit = new Float64Array(size);
      unit[2 * i + axis] = 1;
      return solveSymmetric(hessian, unit, size);
    };
    const x = column(0);
    const y = column(1);
    const xx = x?.[2 * i] ?? Infinity;
    const xy = x?.[2 * i + 1] ?? 0;
    const yy = y?.[2 * i + 1] ?? Infinity;
    spread.set(name, (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
  });
  return spread;
}
