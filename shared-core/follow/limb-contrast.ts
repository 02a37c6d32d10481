import type { Point } from '../units/point';
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
/** A limb goes on a little beyond its landmarks: share of its length. */
const beyondShare = 0.2;

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
        if (x >= 0 && y >= 0 && x < width && y < height) add(count.limb, colours[y * width + x] as number);
      }
  }
  const body = bodyMask(width, height, limbs);
  // every second pixel each way is plenty
  for (let y = 0; y < height; y += 2)
    for (let x = 0; x < width; x += 2)
      if (body[y * width + x] === 0) add(count.rest, colours[y * width + x] as number);
}

/** 1 where a picture's pixel is on a limb or near one, looked at limb by limb within its own box. */
function bodyMask(width: number, height: number, limbs: readonly MarkedLimb[]): Uint8Array {
  const mask = new Uint8Array(width * height);
  for (const limb of limbs) {
    const { from, to, halfWidth } = limb;
    const reach = surelyRest * halfWidth + beyondShare * Math.hypot(to.x - from.x, to.y - from.y) + 1;
    const left = Math.max(0, Math.floor(Math.min(from.x, to.x) - reach));
    const right = Math.min(width - 1, Math.ceil(Math.max(from.x, to.x) + reach));
    const top = Math.max(0, Math.floor(Math.min(from.y, to.y) - reach));
    const bottom = Math.min(height - 1, Math.ceil(Math.max(from.y, to.y) + reach));
    for (let y = top; y <= bottom; y++)
      for (let x = left; x <= right; x++) if (isNear(limb, x, y)) mask[y * width + x] = 1;
  }
  return mask;
}

const add = (table: Float32Array, colour: number): void => {
  table[colour] = (table[colour] as number) + 1;
};

function isNear({ from, to, halfWidth }: MarkedLimb, x: number, y: number): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy || 1;
  const t = Math.max(
    -beyondShare,
    Math.min(1 + beyondShare, ((x - from.x) * dx + (y - from.y) * dy) / square),
  );
  const offX = x - from.x - t * dx;
  const offY = y - from.y - t * dy;
  return offX * offX + offY * offY < (surelyRest * halfWidth) ** 2;
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
    const odds = Math.log(((limb[k] as number) + floor) / ((rest[k] as number) + floor));
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
  const line = new Float32Array(bins + 2);
  const block = stride * bins;
  for (let from = 0; from < table.length; from += block)
    for (let start = from; start < from + stride; start++) {
      let met = false;
      for (let i = 0; i < bins; i++) {
        const here = table[start + i * stride] as number;
        line[i + 1] = here;
        met ||= here !== 0;
      }
      // most colours are never met, and nothing of them is smooth already
      if (!met) continue;
      for (let round = 0; round < rounds; round++) {
        line[0] = line[1] as number;
        line[bins + 1] = line[bins] as number;
        let before = line[0];
        for (let i = 1; i <= bins; i++) {
          const here = line[i] as number;
          line[i] = (2 * here + before + (line[i + 1] as number)) / 4;
          before = here;
        }
      }
      for (let i = 0; i < bins; i++) table[start + i * stride] = line[i + 1] as number;
    }
}
