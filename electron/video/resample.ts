import type { Rect } from '#core/drawing/composition';
import { type Planes, planesSize } from './planes';

/** For every pixel of a row: the first pixel it is made of, how many there are, and how much each counts. */
interface Taps {
  readonly first: Int32Array;
  readonly count: Int32Array;
  /** `most` for each pixel. */
  readonly weights: Float32Array;
  readonly most: number;
}

/**
 * Taps that show `length` pixels from `from` on in `to` pixels: between two neighbours where it is enlarged, the mean of all that
 * a pixel covers where it is made smaller, so that nothing flickers. Beyond the edge the edge goes on.
 */
function tapsOf(from: number, length: number, to: number, size: number): Taps {
  const step = length / to;
  const reach = Math.max(1, step);
  const most = Math.ceil(2 * reach) + 1;
  const first = new Int32Array(to);
  const count = new Int32Array(to);
  const weights = new Float32Array(to * most);
  for (let i = 0; i < to; i++) {
    const middle = from + (i + 0.5) * step - 0.5;
    const begin = Math.max(0, Math.min(size - 1, Math.ceil(middle - reach)));
    const end = Math.max(begin, Math.min(size - 1, Math.floor(middle + reach)));
    let sum = 0;
    for (let at = begin; at <= end; at++) {
      const weight = Math.max(1e-6, 1 - Math.abs(at - middle) / reach);
      weights[i * most + at - begin] = weight;
      sum += weight;
    }
    first[i] = begin;
    count[i] = end - begin + 1;
    for (let n = 0; n < end - begin + 1; n++) weights[i * most + n] = (weights[i * most + n] ?? 0) / sum;
  }
  return { first, count, weights, most };
}

/** Shows a part of a picture at the size of another; parts are in pixels of the luma. Cost: linear in pixels. */
export function resample(source: Planes, crop: Rect, width: number, height: number): Planes {
  const bytes = new Uint8Array(planesSize(width, height));
  const luma = { from: source.width * source.height, to: width * height };
  plane(source.bytes, source.width, source.height, crop, bytes, width, height);
  const half = { x: crop.x / 2, y: crop.y / 2, width: crop.width / 2, height: crop.height / 2 };
  for (const quarter of [0, 1])
    plane(
      source.bytes.subarray(luma.from + (quarter * luma.from) / 4),
      source.width / 2,
      source.height / 2,
      half,
      bytes.subarray(luma.to + (quarter * luma.to) / 4),
      width / 2,
      height / 2,
    );
  return { width, height, bytes };
}

function plane(
  source: Uint8Array,
  width: number,
  height: number,
  crop: Rect,
  target: Uint8Array,
  across: number,
  down: number,
): void {
  const columns = tapsOf(crop.x, crop.width, across, width);
  const rows = tapsOf(crop.y, crop.height, down, height);
  // each row of the source is narrowed once, when the first row that needs it comes
  const narrowed = new Map<number, Float32Array>();
  for (let y = 0; y < down; y++) {
    const first = rows.first[y] ?? 0;
    for (const row of narrowed.keys()) if (row < first) narrowed.delete(row);
    const out = new Float32Array(across);
    for (let n = 0; n < (rows.count[y] ?? 0); n++) {
      const row = narrowed.get(first + n) ?? narrow(source, (first + n) * width, columns, across);
      narrowed.set(first + n, row);
      const weight = rows.weights[y * rows.most + n] ?? 0;
      for (let x = 0; x < across; x++) out[x] = (out[x] ?? 0) + weight * (row[x] ?? 0);
    }
    for (let x = 0; x < across; x++) target[y * across + x] = Math.round(out[x] ?? 0);
  }
}

function narrow(
  source: Uint8Array,
  from: number,
  { first, count, weights, most }: Taps,
  across: number,
): Float32Array {
  const row = new Float32Array(across);
  for (let x = 0; x < across; x++) {
    let value = 0;
    const at = from + (first[x] ?? 0);
    for (let n = 0; n < (count[x] ?? 0); n++) value += (weights[x * most + n] ?? 0) * (source[at + n] ?? 0);
    row[x] = value;
  }
  return row;
}
