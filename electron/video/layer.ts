import type { Planes } from './planes';

/**
 * Something painted, ready to be laid over planes: its colours in the planes' own terms, and how much it covers. Most of a
 * drawing's box is empty, so what is covered is kept as runs: only those are touched when it is laid.
 */
export interface Layer {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly luma: Uint8Array;
  readonly cover: Uint8Array;
  readonly cb: Uint8Array;
  readonly cr: Uint8Array;
  readonly colourCover: Uint8Array;
  /** Covered squares of two by two pixels, three numbers a run: its row, where it begins, where the next empty one is. */
  readonly runs: readonly number[];
}

// ITU-R BT.709, limited range, in 2^16ths: Y' = 0.2126 R + 0.7152 G + 0.0722 B
const [red709, green709, blue709] = [0.2126, 0.7152, 0.0722].map((share) =>
  Math.round(((share * 219) / 255) * 65536),
) as [number, number, number];

/**
 * Turns painted pixels (RGBA, not premultiplied) into a layer. Colour of two by two pixels is their mean, weighted by how
 * much each covers. Place and sizes are even.
 */
export function layerFromRgba(
  rgba: Uint8Array | Uint8ClampedArray,
  { left, top, width, height }: Pick<Layer, 'left' | 'top' | 'width' | 'height'>,
): Layer {
  const luma = new Uint8Array(width * height);
  const cover = new Uint8Array(width * height);
  const across = width >> 1;
  const colours = across * (height >> 1);
  const cb = new Uint8Array(colours);
  const cr = new Uint8Array(colours);
  const colourCover = new Uint8Array(colours);
  const runs: number[] = [];
  // a pixel at a time: red in the lowest byte, as on every machine this runs on. Every index is inside by construction
  const pixels = new Uint32Array(rgba.buffer, rgba.byteOffset, width * height);
  for (let row = 0; row < height >> 1; row++) {
    let began = -1;
    for (let column = 0; column < across; column++) {
      const upper = 2 * row * width + 2 * column;
      const lower = upper + width;
      const a = pixels[upper] as number;
      const b = pixels[upper + 1] as number;
      const c = pixels[lower] as number;
      const d = pixels[lower + 1] as number;
      const covered = (a >>> 24) + (b >>> 24) + (c >>> 24) + (d >>> 24);
      if (covered === 0) {
        if (began >= 0) runs.push(row, began, column);
        began = -1;
        continue;
      }
      if (began < 0) began = column;
      let red = 0;
      let green = 0;
      let blue = 0;
      for (let n = 0; n < 4; n++) {
        const at = (n < 2 ? upper : lower) + (n & 1);
        const pixel = pixels[at] as number;
        const alpha = pixel >>> 24;
        const r = pixel & 255;
        const g = (pixel >> 8) & 255;
        const blueOf = (pixel >> 16) & 255;
        luma[at] = 16 + ((red709 * r + green709 * g + blue709 * blueOf + 32768) >> 16);
        cover[at] = alpha;
        red += r * alpha;
        green += g * alpha;
        blue += blueOf * alpha;
      }
      const at = row * across + column;
      red /= covered;
      green /= covered;
      blue /= covered;
      const grey = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
      cb[at] = Math.round(128 + ((224 / 255) * (blue - grey)) / 1.8556);
      cr[at] = Math.round(128 + ((224 / 255) * (red - grey)) / 1.5748);
      colourCover[at] = (covered + 2) >> 2;
    }
    if (began >= 0) runs.push(row, began, across);
  }
  return { left, top, width, height, luma, cover, cb, cr, colourCover, runs };
}

/** Columns of a picture, the last one not included; both even. */
export interface Columns {
  readonly from: number;
  readonly to: number;
}

/** Lays a layer over a picture, or over some of its columns; what lies outside the picture is left out. */
export function layOver(
  target: Planes,
  layer: Layer,
  columns: Columns = { from: 0, to: target.width },
): void {
  const { width, height, bytes } = target;
  const { runs, luma, cover, cb, cr, colourCover } = layer;
  const half = width >> 1;
  const across = layer.width >> 1;
  const [left, top] = [layer.left >> 1, layer.top >> 1];
  const least = Math.max(0, columns.from >> 1) - left;
  const most = Math.min(half, columns.to >> 1) - left;
  const colourPlanes = [width * height, width * height + half * (height >> 1)] as const;
  for (let run = 0; run < runs.length; run += 3) {
    const row = runs[run] as number;
    const y = top + row;
    const from = Math.max(least, runs[run + 1] as number);
    const count = Math.min(most, runs[run + 2] as number) - from;
    if (count <= 0 || y < 0 || y >= height >> 1) continue;
    const inLayer = 2 * row * layer.width + 2 * from;
    const inPicture = 2 * y * width + 2 * (left + from);
    blend(bytes, inPicture, luma, cover, inLayer, 2 * count);
    blend(bytes, inPicture + width, luma, cover, inLayer + layer.width, 2 * count);
    const colour = row * across + from;
    const at = y * half + left + from;
    blend(bytes, colourPlanes[0] + at, cb, colourCover, colour, count);
    blend(bytes, colourPlanes[1] + at, cr, colourCover, colour, count);
  }
}

function blend(
  target: Uint8Array,
  to: number,
  values: Uint8Array,
  cover: Uint8Array,
  from: number,
  count: number,
): void {
  for (let n = 0; n < count; n++) {
    const was = target[to + n] as number;
    const change = ((values[from + n] as number) - was) * (cover[from + n] as number);
    // a 255th, rounded: 257 / 65536 is one to within less than a step
    target[to + n] = was + ((change * 257 + 32768) >> 16);
  }
}
