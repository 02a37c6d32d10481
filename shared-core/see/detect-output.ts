import type { Point } from '../units/point';
import { type Square, squareOf, squaresMeet } from './square';

/** Side of the square the detector takes, pixels. */
export const detectSize = 224;
const values = 12;
/** Grid steps of the detector's layers, pixels; each place of a layer has two boxes. */
const layers = [8, 16, 32, 32, 32] as const;
const boxesEach = 2;

/** A body the detector found: the square for the landmark network, and how sure it is, 0 to 1. */
export interface Detection {
  readonly square: Square;
  readonly sure: number;
}

/** The middles of the detector's boxes, shares of its square, in the order of its output. */
function boxMiddles(): readonly Point[] {
  const middles: Point[] = [];
  for (let first = 0; first < layers.length; ) {
    const step = layers[first] ?? 32;
    let same = first;
    while (same < layers.length && layers[same] === step) same += 1;
    const across = Math.ceil(detectSize / step);
    for (let row = 0; row < across; row++)
      for (let column = 0; column < across; column++)
        for (let box = 0; box < boxesEach * (same - first); box++)
          middles.push({ x: (column + 0.5) / across, y: (row + 0.5) / across });
    first = same;
  }
  return middles;
}
const middles = boxMiddles();

/**
 * Bodies the detector sees in an upright square of the picture, surest first, one for each body. `boxes` are 2254 × 12 numbers
 * in pixels from each box's middle (of which the middle of the hips and how far the body reaches are used), `scores` as many
 * logits. Throws when there are not as many.
 */
export function readDetections(
  boxes: ArrayLike<number>,
  scores: ArrayLike<number>,
  window: Square,
  leastSure: number,
): readonly Detection[] {
  if (boxes.length !== values * middles.length || scores.length !== middles.length)
    throw new Error(`the detector gave ${boxes.length} and ${scores.length} values`);
  const found: Detection[] = [];
  middles.forEach((middle, i) => {
    const sure = 1 / (1 + Math.exp(-(scores[i] as number)));
    if (sure < leastSure) return;
    const place = (k: number): Point => ({
      x: window.x + window.side * (middle.x + (boxes[values * i + 4 + 2 * k] as number) / detectSize - 0.5),
      y: window.y + window.side * (middle.y + (boxes[values * i + 5 + 2 * k] as number) / detectSize - 0.5),
    });
    found.push({ square: squareOf(place(0), place(1)), sure });
  });
  return onePerBody(found);
}

/** The surest of those that lie on each other, surest first. */
export function onePerBody(found: readonly Detection[]): readonly Detection[] {
  const kept: Detection[] = [];
  for (const each of [...found].sort((a, b) => b.sure - a.sure))
    if (kept.every((other) => squaresMeet(each.square, other.square) < 0.35)) kept.push(each);
  return kept;
}
