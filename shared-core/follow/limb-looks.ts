import type { LandmarkName } from '../marks/landmark';
import type { GreyLevel } from './grey-pyramid';
import type { Limb } from './limb';
import { type LimbTemplate, levelOf, samplesMost } from './limb-template';

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
  /** Products of one limb's slopes, summed before they go into the whole. */
  block: new Float64Array(14),
  places: [0, 0, 0, 0],
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
  const residuals = new Map<Limb, { readonly squares: number; readonly weight: number }>();
  for (const { template, weight } of templates) {
    const a = index.get(template.limb.from);
    const b = index.get(template.limb.to);
    const look = template.levels[level];
    if (a === undefined || b === undefined || !look || weight <= 0) continue;
    const ax = levelOf(state[2 * a] as number, level);
    const ay = levelOf(state[2 * a + 1] as number, level);
    const dx = levelOf(state[2 * b] as number, level) - ax;
    const dy = levelOf(state[2 * b + 1] as number, level) - ay;
    const length = Math.hypot(dx, dy);
    if (length < 1) continue;
    const strip: Strip = { ax, ay, dx, dy, length };
    const spreads = sampleStrip(picture, look, strip);
    const squares = sumProducts(look, strip, spreads, weight, 2 ** level);
    const kept = residuals.get(template.limb);
    residuals.set(template.limb, {
      squares:
        (kept?.squares ?? 0) +
        (weight * squares) / (look.grey.length * spreads.spreadThen * spreads.spreadThen),
      weight: (kept?.weight ?? 0) + weight,
    });
    addBlock(2 * a, 2 * b, hessian, gradient);
  }
  return residuals;
}

/** A limb where it is thought to be, in pixels of the level. */
interface Strip {
  readonly ax: number;
  readonly ay: number;
  readonly dx: number;
  readonly dy: number;
  readonly length: number;
}

/** Mean and spread of grey at a limb's samples, now and on the frame that was marked. */
interface Spreads {
  readonly meanNow: number;
  readonly meanThen: number;
  readonly spreadNow: number;
  readonly spreadThen: number;
}

type Look = NonNullable<LimbTemplate['levels'][number]>;

/** Puts grey and its slopes at the limb's samples into the scratch arrays. */
function sampleStrip(
  { width, height, grey }: GreyLevel,
  { along, across, grey: then }: Look,
  { ax, ay, dx, dy, length }: Strip,
): Spreads {
  const { now, x: slopesX, y: slopesY } = scratch;
  const ux = dx / length;
  const uy = dy / length;
  const count = then.length;
  const rightmost = width - 1.001;
  const lowest = height - 1.001;
  let sumNow = 0;
  let sumThen = 0;
  let squareNow = 0;
  let squareThen = 0;
  for (let k = 0; k < count; k++) {
    const t = along[k] as number;
    const v = across[k] as number;
    let x = ax + t * dx - v * uy;
    let y = ay + t * dy + v * ux;
    if (!(x > 0)) x = 0;
    else if (x > rightmost) x = rightmost;
    if (!(y > 0)) y = 0;
    else if (y > lowest) y = lowest;
    const left = x | 0;
    const top = y | 0;
    const fx = x - left;
    const fy = y - top;
    const at = top * width + left;
    const p = grey[at] as number;
    const right = (grey[at + 1] as number) - p;
    const down = (grey[at + width] as number) - p;
    const twist = (grey[at + width + 1] as number) - p - right - down;
    const g = p + fx * right + fy * (down + fx * twist);
    const was = then[k] as number;
    now[k] = g;
    slopesX[k] = right + fy * twist;
    slopesY[k] = down + fx * twist;
    sumNow += g;
    sumThen += was;
    squareNow += g * g;
    squareThen += was * was;
  }
  const meanNow = sumNow / count;
  const meanThen = sumThen / count;
  const spreadNow = Math.sqrt(Math.max(1, squareNow / count - meanNow * meanNow));
  const spreadThen = Math.sqrt(Math.max(1, squareThen / count - meanThen * meanThen));
  return { meanNow, meanThen, spreadNow, spreadThen };
}

/** Sums the products of one limb's slopes and differences into the block; the answer is the sum of squared differences. */
function sumProducts(
  { along, across, grey: then }: Look,
  { dx, dy, length }: Strip,
  spreads: Spreads,
  weight: number,
  scale: number,
): number {
  const { now, x: slopesX, y: slopesY } = scratch;
  const { meanNow, meanThen } = spreads;
  const ux = dx / length;
  const uy = dy / length;
  const count = then.length;
  const gain = Math.max(0.6, Math.min(1.6, spreads.spreadThen / spreads.spreadNow));
  const slope = gain / scale;
  const share = (weight * independentShare) / (greySd * greySd);
  let squares = 0;
  // in locals while they are summed: this loop is most of what following costs
  let axax = 0;
  let axay = 0;
  let axbx = 0;
  let axby = 0;
  let ayay = 0;
  let aybx = 0;
  let ayby = 0;
  let bxbx = 0;
  let bxby = 0;
  let byby = 0;
  let axOff = 0;
  let ayOff = 0;
  let bxOff = 0;
  let byOff = 0;
  for (let k = 0; k < count; k++) {
    const t = along[k] as number;
    const v = across[k] as number;
    const off = gain * ((now[k] as number) - meanNow) - ((then[k] as number) - meanThen);
    const w = share / (1 + off * off * softness);
    squares += off * off;
    const gx = slope * (slopesX[k] as number);
    const gy = slope * (slopesY[k] as number);
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
    axax += s0 * fx;
    axay += s0 * fy;
    axbx += s0 * bx;
    axby += s0 * by;
    ayay += s1 * fy;
    aybx += s1 * bx;
    ayby += s1 * by;
    bxbx += s2 * bx;
    bxby += s2 * by;
    byby += s3 * by;
    axOff += s0 * off;
    ayOff += s1 * off;
    bxOff += s2 * off;
    byOff += s3 * off;
  }
  scratch.block.set([axax, axay, axbx, axby, ayay, aybx, ayby, bxbx, bxby, byby, axOff, ayOff, bxOff, byOff]);
  return squares;
}

/** Adds the block of a limb between two landmarks, whose x stand at these places, to the equations. */
function addBlock(a: number, b: number, hessian: Float64Array, gradient: Float64Array): void {
  const { places } = scratch;
  places[0] = a;
  places[1] = a + 1;
  places[2] = b;
  places[3] = b + 1;
  let k = 0;
  const size = gradient.length;
  for (let i = 0; i < 4; i++) {
    const p = places[i] as number;
    gradient[p] = (gradient[p] as number) + (scratch.block[10 + i] as number);
    for (let j = i; j < 4; j++, k++) {
      const q = places[j] as number;
      const value = scratch.block[k] as number;
      hessian[p * size + q] = (hessian[p * size + q] as number) + value;
      if (p !== q) hessian[q * size + p] = (hessian[q * size + p] as number) + value;
    }
  }
}
