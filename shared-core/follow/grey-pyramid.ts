/** A grey picture at one size; its first pixel's centre lies at (0, 0) of its own pixels. */
export interface GreyLevel {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** The picture and its halvings, each pixel the mean of four; `levels` pictures in all. */
export function greyPyramid(
  width: number,
  height: number,
  grey: Uint8Array,
  levels: number,
): readonly GreyLevel[] {
  const made: GreyLevel[] = [{ width, height, grey }];
  for (let level = 1; level < levels; level++) {
    const larger = made[level - 1] as GreyLevel;
    const w = larger.width >> 1;
    const h = larger.height >> 1;
    if (w < 8 || h < 8) break;
    const smaller = new Uint8Array(w * h);
    for (let y = 0; y < h; y++) {
      let above = 2 * y * larger.width;
      let below = above + larger.width;
      const row = y * w;
      for (let x = 0; x < w; x++, above += 2, below += 2) {
        smaller[row + x] =
          ((larger.grey[above] as number) +
            (larger.grey[above + 1] as number) +
            (larger.grey[below] as number) +
            (larger.grey[below + 1] as number) +
            2) >>
          2;
      }
    }
    made.push({ width: w, height: h, grey: smaller });
  }
  return made;
}

/** Grey between pixels, by the four around; the picture's edge goes on for ever. */
export function greyAt({ width, height, grey }: GreyLevel, x: number, y: number): number {
  const cx = Math.max(0, Math.min(width - 1.001, x));
  const cy = Math.max(0, Math.min(height - 1.001, y));
  const left = cx | 0;
  const top = cy | 0;
  const fx = cx - left;
  const fy = cy - top;
  const at = top * width + left;
  const a = grey[at] as number;
  const b = grey[at + 1] as number;
  const c = grey[at + width] as number;
  const d = grey[at + width + 1] as number;
  return a + fx * (b - a) + fy * (c - a + fx * (a - b - c + d));
}
