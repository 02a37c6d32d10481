import type { Point } from '../units/point';
import { type GreyLevel, greyAt } from './grey-pyramid';
import type { Limb } from './limb';

/** How a limb looks on a frame where both its ends are marked: samples along and across it, at each picture size. */
export interface LimbTemplate {
  readonly limb: Limb;
  readonly levels: readonly TemplateLevel[];
}

interface TemplateLevel {
  /** Place of each sample along the limb: 0 at its first end, 1 at its other. */
  readonly along: Float32Array;
  /** Pixels (of this level) square to the limb, to its left in a picture whose y runs down. */
  readonly across: Float32Array;
  readonly grey: Float32Array;
}

/** Samples across a limb at each level. Enough to see both edges; our choice. */
const acrossCount = 9;
const alongMost = 36;
/** Samples a limb has at one level at most. */
export const samplesMost = acrossCount * alongMost;

/**
 * Samples a limb. `from` and `to` are its marked ends in pixels of the first level; `bodyLength` in the same pixels.
 * Null when the ends lie closer together than three pixels: a limb seen end on has no look of its own.
 */
export function limbTemplate(
  pyramid: readonly GreyLevel[],
  limb: Limb,
  from: Point,
  to: Point,
  bodyLength: number,
): LimbTemplate | null {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 3) return null;
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const first = (-limb.before * bodyLength) / length;
  const last = 1 + (limb.beyond * bodyLength) / length;
  const levels = pyramid.map((picture, level): TemplateLevel => {
    const scale = 2 ** level;
    const pixels = ((last - first) * length) / scale;
    const alongCount = Math.max(4, Math.min(alongMost, Math.round(pixels)));
    const half = (limb.halfWidth * bodyLength) / scale;
    const count = alongCount * acrossCount;
    const along = new Float32Array(count);
    const across = new Float32Array(count);
    const grey = new Float32Array(count);
    let k = 0;
    for (let i = 0; i < alongCount; i++) {
      const t = first + ((last - first) * (i + 0.5)) / alongCount;
      for (let j = 0; j < acrossCount; j++, k++) {
        const v = half * ((2 * j) / (acrossCount - 1) - 1);
        along[k] = t;
        across[k] = v;
        const x = levelOf(from.x + t * (to.x - from.x), level) - v * uy;
        const y = levelOf(from.y + t * (to.y - from.y), level) + v * ux;
        grey[k] = greyAt(picture, x, y);
      }
    }
    return { along, across, grey };
  });
  return { limb, levels };
}

/** A pixel place of the first level in pixels of another: centres of four make one. */
export function levelOf(place: number, level: number): number {
  return (place + 0.5) / 2 ** level - 0.5;
}
