import type { Point } from '../units/brand';
import { brightnessBins, chromaBins, packedColours, unpackColour } from './packed-colour';
import { skinContrast } from './skin-contrast';

/** A marked limb in a picture's own pixels. */
export interface MarkedLimb {
  readonly from: Point;
  readonly to: Point;
  /** Half of the strip around it that belongs to the body, pixels. */
  readonly halfWidth: number;
  /** Bare arms and legs: their colours are learned. The others only keep the body out of what lies behind it. */
  readonly bare: boolean;
}

/** A picture's packed colours, row by row. */
export interface ColourArea {
  readonly width: number;
  readonly height: number;
  readonly colours: Uint16Array;
}

/** How often each packed colour was met on the limbs, and away from the body. */
export interface ColourCount {
  readonly limb: Float32Array;
  readonly rest: Float32Array;
}

export const emptyColourCount = (): ColourCount => ({
  limb: new Float32Array(packedColours),
  rest: new Float32Array(packedColours),
});

/** Only the middle of a limb is surely limb, and only what lies this many half widths off is surely not. Our choice. */
const surelyLimb = 0.4;
const surelyRest = 1.5;

/** Counts the colours of one marked picture into `count`. */
export function countColours(
  count: ColourCount,
  { width, height, colours }: ColourArea,
  limbs: readonly MarkedLimb[],
): void {
  for (const { from, to, halfWidth, bare } of limbs) {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (!bare || length < 3) continue;
    const ux = (to.x - from.x) / length;
    const uy = (to.y - from.y) / length;
    const half = surelyLimb * halfWidth;
    for (let t = 0.05 * length; t < 0.95 * length; t++)
      for (let v = -half; v <= half; v++) {
        const x = Math.round(from.x + t * ux - v * uy);
        const y = Math.round(from.y + t * uy + v * ux);
        if (x >= 0 && y >= 0 && x < width && y < height) add(count.limb, colours[y * width + x] ?? 0);
      }
  }
  // every second pixel each way is plenty
  for (let y = 0; y < height; y += 2)
    for (let x = 0; x < width; x += 2)
      if (!limbs.some((limb) => isNear(limb, x, y))) add(count.rest, colours[y * width + x] ?? 0);
}

const add = (table: Float32Array, colour: number): void => {
  table[colour] = (table[colour] ?? 0) + 1;
};

function isNear({ from, to, halfWidth }: MarkedLimb, x: number, y: number): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy || 1;
  // a limb goes on a little beyond its landmarks
  const t = Math.max(-0.2, Math.min(1.2, ((x - from.x) * dx + (y - from.y) * dy) / square));
  return Math.hypot(x - from.x - t * dx, y - from.y - t * dy) < surelyRest * halfWidth;
}

/** Fewer limb pixels than this teach nothing. Our choice. */
const leastPixels = 400;
/** Shares below this are chance: keeps the odds of colours never met finite. */
const floor = 1e-5;
/** Grey steps for each e-fold of the odds: four e-folds either way fill most of the range. */
const steps = 20;

/**
 * How each packed colour is seen for following, 0 to 255: 128 where it says nothing, brighter the more it speaks for a
 * bare limb and against what lies around the swimmer (the logarithm of the odds, from smoothed counts). Learned from
 * the coach's own marks on the very film, so that it holds for any skin, water, light and camera. With too little
 * marked: a little brightness and much redness (`skinContrast`).
 */
export function limbContrast(count: ColourCount): Uint8Array {
  const met = (table: Float32Array): number => table.reduce((sum, each) => sum + each, 0);
  const table = new Uint8Array(packedColours);
  if (met(count.limb) < leastPixels || met(count.rest) < leastPixels) {
    for (let k = 0; k < packedColours; k++) {
      const { brightness, redness } = unpackColour(k);
      table[k] = skinContrast(brightness, redness);
    }
    return table;
  }
  const limb = smoothShares(count.limb);
  const rest = smoothShares(count.rest);
  for (let k = 0; k < packedColours; k++) {
    const odds = Math.log(((limb[k] ?? 0) + floor) / ((rest[k] ?? 0) + floor));
    table[k] = Math.round(Math.max(0, Math.min(255, 128 + steps * odds)));
  }
  return table;
}

/** Counts as shares of all, smoothed along each colour axis so that a few marked frames stand for many. */
function smoothShares(counts: Float32Array): Float32Array {
  const own = counts.slice();
  smoothAlong(own, chromaBins * chromaBins, brightnessBins, 2);
  smoothAlong(own, chromaBins, chromaBins, 3);
  smoothAlong(own, 1, chromaBins, 3);
  const all = own.reduce((sum, each) => sum + each, 0);
  return own.map((each) => each / all);
}

/** Weighs each bin with its neighbours along one axis (1, 2, 1), `rounds` times; the ends stand for what is beyond. */
function smoothAlong(table: Float32Array, stride: number, bins: number, rounds: number): void {
  const line = new Float32Array(bins);
  for (let start = 0; start < table.length; start++) {
    if (Math.floor(start / stride) % bins !== 0) continue;
    for (let round = 0; round < rounds; round++) {
      for (let i = 0; i < bins; i++) line[i] = table[start + i * stride] ?? 0;
      for (let i = 0; i < bins; i++) {
        const here = line[i] ?? 0;
        table[start + i * stride] = (2 * here + (line[i - 1] ?? here) + (line[i + 1] ?? here)) / 4;
      }
    }
  }
}
