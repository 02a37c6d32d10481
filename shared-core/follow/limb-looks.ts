import type { LandmarkName } from '../marks/landmark';
import type { GreyLevel } from './grey-pyramid';
import type { Limb } from './limb';
import { levelOf, type LimbTemplate, samplesMost } from './limb-template';

/** How a limb looked on a marked frame, and how much that look counts now. */
export interface WeighedTemplate {
  readonly template: LimbTemplate;
  readonly weight: number;
}

/** Grey levels by which a limb looks different from itself (moving light, noise, shading). Set on the sample clips. */
const greySd = 16;
/** Neighbouring samples are not independent: this share of them counts. Our default. */
const independentShare = 0.08;
/** A difference of two and a half usual ones counts half. */
const softness = 1 / (2.5 * greySd) ** 2;

/** Of each limb, the weighed mean square of what its looks could not explain. */
export type Residuals = ReadonlyMap<Limb, { readonly squares: number; readonly weight: number }>;

/** Grey and its slopes at one limb's samples; used and left again within one call. */
const scratch = {
  now: new Float32Array(samplesMost),
  x: new Float32Array(samplesMost),
  y: new Float32Array(samplesMost),
};

/**
 * Adds what one picture says about the body's places: for every limb the differences of grey from its marked look, with
 * their slopes, into the normal equations (x and y of each landmark in turn). The inner loop of following, hence the
 * plain arrays.
 */
export function addLooks(
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
      squares: (kept?.squares ?? 0) + (weight * squares) / (count * spreadThen * spreadThen),
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
