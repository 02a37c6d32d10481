import type { Point } from '../units/point';
import { fromSquare, intoSquare, type Square } from './square';

/** The body's outline in a square: over zero inside, row by row. */
export interface BodyMask {
  readonly size: number;
  readonly values: ArrayLike<number>;
}

/** How wide a limb's end is looked for to each side of its line, and how far it may go on; shares of its reach. */
const halfWidth = 0.75;
/** The farthest so many pixels, in a row from the end, are evened out. */
const tipPixels = 2.5;
/** What is nothing but the joint itself is no end. */
const leastPixels = 6;

/**
 * Where a limb ends in the body's outline: of what hangs together with its joint and lies beyond it along a line, the farthest
 * part's middle. Null where the joint lies outside the outline, nothing goes on, or it goes on to the very limit (then
 * something else hangs on).
 *
 * @param along which way the limb goes from the joint; its length says nothing
 * @param reach how far it goes at most, pixels of the picture
 */
export function maskEnd(
  mask: BodyMask,
  square: Square,
  joint: Point,
  along: Point,
  reach: number,
): Point | null {
  const { size, values } = mask;
  const length = Math.hypot(along.x, along.y);
  if (!(length > 0) || !(reach > 0)) return null;
  const from = intoSquare(square, joint);
  const towards = intoSquare(square, { x: joint.x + along.x / length, y: joint.y + along.y / length });
  const unit = square.side / size;
  // along the limb, in pixels of the outline
  const ux = (towards.u - from.u) * square.side;
  const uy = (towards.v - from.v) * square.side;
  const [x0, y0] = [from.u * size - 0.5, from.v * size - 0.5];
  const most = reach / unit;
  const wide = halfWidth * most;
  const start = nearestInside(mask, x0, y0, most / 3);
  if (start === null) return null;
  const seen = new Set<number>([start]);
  const queue = [start];
  const ends: { readonly x: number; readonly y: number; readonly far: number }[] = [];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const x = next % size;
    const y = (next - x) / size;
    const far = (x - x0) * ux + (y - y0) * uy;
    const aside = Math.abs((y - y0) * ux - (x - x0) * uy);
    if (far > 0) ends.push({ x, y, far });
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const [nx, ny] = [x + dx, y + dy];
      if (nx < 0 || ny < 0 || nx >= size || ny >= size) continue;
      const place = ny * size + nx;
      const on = (nx - x0) * ux + (ny - y0) * uy;
      if (seen.has(place) || on < -wide / 2 || on > most || aside > wide || (values[place] as number) <= 0)
        continue;
      seen.add(place);
      queue.push(place);
    }
  }
  if (ends.length < leastPixels) return null;
  const farthest = Math.max(...ends.map(({ far }) => far));
  if (farthest > most - 1) return null;
  const tip = ends.filter(({ far }) => far > farthest - tipPixels);
  const mean = (pick: (each: Point) => number): number =>
    tip.reduce((sum, each) => sum + pick(each), 0) / tip.length;
  // the tip's middle lies behind its foremost edge by half of what was evened out
  const on = tip.reduce((sum, { far }) => sum + (farthest - far), 0) / tip.length + 0.5;
  return fromSquare(
    square,
    (mean(({ x }) => x) + on * ux + 0.5) / size,
    (mean(({ y }) => y) + on * uy + 0.5) / size,
  );
}

/** The nearest pixel inside the outline, its number; null when there is none so near. */
function nearestInside({ size, values }: BodyMask, x: number, y: number, most: number): number | null {
  let best: number | null = null;
  let least = most;
  const reach = Math.ceil(most);
  for (let dy = -reach; dy <= reach; dy++)
    for (let dx = -reach; dx <= reach; dx++) {
      const [i, j] = [Math.round(x) + dx, Math.round(y) + dy];
      if (i < 0 || j < 0 || i >= size || j >= size || (values[j * size + i] as number) <= 0) continue;
      const off = Math.hypot(i - x, j - y);
      if (off < least) [best, least] = [j * size + i, off];
    }
  return best;
}
