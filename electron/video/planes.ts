/** A picture as H.264 takes it: 8-bit luma, then two colour planes of half its size, BT.709 in the limited range. */
export interface Planes {
  readonly width: number;
  readonly height: number;
  /** Luma, then Cb, then Cr, one after another. */
  readonly bytes: Uint8Array;
}

export const planesSize = (width: number, height: number): number => (width * height * 3) / 2;

export function blackPlanes(width: number, height: number): Planes {
  const bytes = new Uint8Array(planesSize(width, height)).fill(128);
  bytes.fill(16, 0, width * height);
  return { width, height, bytes };
}

/** Makes a box of a picture black; place and sizes are even. */
export function blackenBox(
  { width, height, bytes }: Planes,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): void {
  const luma = width * height;
  for (let y = box.y; y < box.y + box.height; y++)
    bytes.fill(16, y * width + box.x, y * width + box.x + box.width);
  for (const offset of [luma, luma + luma / 4])
    for (let y = box.y / 2; y < (box.y + box.height) / 2; y++) {
      const from = offset + (y * width + box.x) / 2;
      bytes.fill(128, from, from + box.width / 2);
    }
}

/** Copies a whole picture into a larger one; place and sizes are even. */
export function copyInto(target: Planes, source: Planes, left: number, top: number): void {
  let from = 0;
  const plane = (offset: number, width: number, x: number, y: number, w: number, h: number): void => {
    let to = offset + y * width + x;
    for (let row = 0; row < h; row++) {
      target.bytes.set(source.bytes.subarray(from, from + w), to);
      from += w;
      to += width;
    }
  };
  const luma = target.width * target.height;
  const half = {
    width: target.width / 2,
    x: left / 2,
    y: top / 2,
    w: source.width / 2,
    h: source.height / 2,
  };
  plane(0, target.width, left, top, source.width, source.height);
  plane(luma, half.width, half.x, half.y, half.w, half.h);
  plane(luma + luma / 4, half.width, half.x, half.y, half.w, half.h);
}

/** Something painted, ready to be laid over planes: its colours in the planes' own terms, and how much it covers. */
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
}

/**
 * Turns painted pixels (RGBA, not premultiplied) into a layer. BT.709, ITU-R: Y' = 0.2126 R + 0.7152 G + 0.0722 B. Colour
 * of two by two pixels is their mean, weighted by how much each covers. Place and sizes are even.
 */
export function layerFromRgba(
  rgba: Uint8Array | Uint8ClampedArray,
  { left, top, width, height }: Pick<Layer, 'left' | 'top' | 'width' | 'height'>,
): Layer {
  const luma = new Uint8Array(width * height);
  const cover = new Uint8Array(width * height);
  const colours = (width * height) / 4;
  const cb = new Uint8Array(colours).fill(128);
  const cr = new Uint8Array(colours).fill(128);
  const colourCover = new Uint8Array(colours);
  for (let y = 0; y < height; y += 2) {
    for (let x = 0; x < width; x += 2) {
      let red = 0;
      let green = 0;
      let blue = 0;
      let covered = 0;
      for (let n = 0; n < 4; n++) {
        const at = (y + (n >> 1)) * width + x + (n & 1);
        const alpha = rgba[at * 4 + 3] ?? 0;
        if (alpha === 0) continue;
        const r = rgba[at * 4] ?? 0;
        const g = rgba[at * 4 + 1] ?? 0;
        const b = rgba[at * 4 + 2] ?? 0;
        luma[at] = Math.round(16 + (219 / 255) * (0.2126 * r + 0.7152 * g + 0.0722 * b));
        cover[at] = alpha;
        red += r * alpha;
        green += g * alpha;
        blue += b * alpha;
        covered += alpha;
      }
      if (covered === 0) continue;
      const at = (y >> 1) * (width >> 1) + (x >> 1);
      red /= covered;
      green /= covered;
      blue /= covered;
      const grey = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
      cb[at] = Math.round(128 + ((224 / 255) * (blue - grey)) / 1.8556);
      cr[at] = Math.round(128 + ((224 / 255) * (red - grey)) / 1.5748);
      colourCover[at] = Math.round(covered / 4);
    }
  }
  return { left, top, width, height, luma, cover, cb, cr, colourCover };
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
  const luma = width * height;
  const half = { from: columns.from / 2, to: columns.to / 2 };
  blend(bytes, 0, width, height, layer.luma, layer.cover, layer, 1, columns);
  blend(bytes, luma, width / 2, height / 2, layer.cb, layer.colourCover, layer, 2, half);
  blend(bytes, luma + luma / 4, width / 2, height / 2, layer.cr, layer.colourCover, layer, 2, half);
}

function blend(
  target: Uint8Array,
  offset: number,
  width: number,
  height: number,
  values: Uint8Array,
  cover: Uint8Array,
  layer: Layer,
  shrink: 1 | 2,
  columns: Columns,
): void {
  const left = layer.left / shrink;
  const top = layer.top / shrink;
  const across = layer.width / shrink;
  const down = layer.height / shrink;
  const x0 = Math.max(0, columns.from - left, -left);
  const x1 = Math.min(across, columns.to - left, width - left);
  for (let y = Math.max(0, -top); y < Math.min(down, height - top); y++) {
    let from = y * across + x0;
    let to = offset + (top + y) * width + left + x0;
    for (let x = x0; x < x1; x++, from++, to++) {
      const alpha = cover[from] as number;
      if (alpha === 0) continue;
      const value = values[from] as number;
      if (alpha === 255) target[to] = value;
      else {
        const was = target[to] as number;
        target[to] = was + Math.round(((value - was) * alpha) / 255);
      }
    }
  }
}
