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
