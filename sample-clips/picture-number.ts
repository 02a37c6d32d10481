/**
 * The number that every sample picture carries: a strip of square blocks in its lower left corner. First block white,
 * last black, ten bits between (lowest first), then their parity (white when odd). Read in the middle of each block, so
 * compression and colour ranges do not matter. Pure; for tests in any environment.
 */
export const numberBits = 10;
export const numberBlocks = numberBits + 3;

export interface NumberStrip {
  readonly left: number;
  readonly top: number;
  readonly block: number;
}

/** Where the strip lies in a picture of this size, pixels. */
export function numberStrip(width: number, height: number): NumberStrip {
  const block = Math.max(8, Math.round(Math.min(width, height) / 60));
  return { left: block, top: height - 2 * block, block };
}

/** The blocks of a number, true for white. */
export function numberPattern(number: number): readonly boolean[] {
  const bits = Array.from({ length: numberBits }, (_, bit) => ((number >> bit) & 1) === 1);
  return [true, ...bits, bits.filter(Boolean).length % 2 === 1, false];
}

/** Reads the number from RGBA pixels, or null when there is none to read. */
export function readPictureNumber(pixels: ArrayLike<number>, width: number, height: number): number | null {
  const { left, top, block } = numberStrip(width, height);
  const seen: boolean[] = [];
  for (let i = 0; i < numberBlocks; i++) {
    const x = left + Math.floor((i + 0.5) * block);
    const y = top + Math.floor(block / 2);
    const green = pixels[(y * width + x) * 4 + 1] ?? 128;
    if (green >= 96 && green <= 160) return null;
    seen.push(green > 160);
  }
  const bits = seen.slice(1, 1 + numberBits);
  const odd = bits.filter(Boolean).length % 2 === 1;
  if (seen[0] !== true || seen.at(-1) !== false || seen.at(-2) !== odd) return null;
  return bits.reduce((number, bit, i) => number + (bit ? 2 ** i : 0), 0);
}
