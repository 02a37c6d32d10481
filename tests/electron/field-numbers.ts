import { execa } from 'execa';
import { readCode } from '#tests/browser/harness/picture-code';

/** The number of a picture, read from the lines that were filmed at its moment: for even frames those of the first field. */
export function fieldNumber(
  rgba: Uint8Array,
  width: number,
  height: number,
  frame: number,
  first: 'top' | 'bottom' = 'top',
): number | null {
  const row = width * 4;
  const lines = new Uint8ClampedArray(row * height);
  const odd = (frame & 1) ^ (first === 'top' ? 0 : 1);
  for (let y = 0; y < height; y++) {
    const own = ((y & ~1) + odd) * row;
    lines.set(rgba.subarray(own, own + row), y * row);
  }
  return readCode(lines, width, height);
}

/** The numbers in the pictures of a film, the first of which is frame `first`. */
export async function fieldNumbers(
  film: string,
  first = 0,
  { width, height, order }: { width: number; height: number; order: 'top' | 'bottom' } = {
    ...{ width: 640, height: 360, order: 'top' },
  },
): Promise<(number | null)[]> {
  const { stdout } = await execa(
    'ffmpeg',
    ['-v', 'error', '-i', film, '-fps_mode', 'passthrough', '-pix_fmt', 'rgba', '-f', 'rawvideo', '-'],
    { encoding: 'buffer', maxBuffer: 4e9, stripFinalNewline: false },
  );
  const size = width * height * 4;
  return Array.from({ length: Math.floor(stdout.byteLength / size) }, (_, n) =>
    fieldNumber(stdout.subarray(n * size, (n + 1) * size), width, height, first + n, order),
  );
}
