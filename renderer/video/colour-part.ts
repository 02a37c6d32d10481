import { packColour } from '#core/follow/packed-colour';
import type { DrawPicture, PicturePart } from './picture-part';

/** Where brightness, blueness (Cb) and redness (Cr) of a picture lie in its bytes. */
export interface ColourPlanes {
  readonly bytes: Uint8Array;
  readonly brightness: PlaneLayout;
  readonly blueness: PlaneLayout;
  readonly redness: PlaneLayout;
  /** Bytes from one redness (or blueness) to the next, and how many pixels across and down share one. */
  readonly step: number;
  readonly across: number;
  readonly down: number;
}

/** Finds the planes of the eight-bit layouts decoders give; null for others. */
export function colourPlanes(
  format: VideoPixelFormat | null,
  bytes: Uint8Array,
  layout: readonly PlaneLayout[],
): ColourPlanes | null {
  const [first, second, third] = layout;
  if (!first || !second) return null;
  const shared = { bytes, brightness: first, blueness: second };
  switch (format) {
    case 'NV12':
      return { ...shared, redness: { ...second, offset: second.offset + 1 }, step: 2, across: 2, down: 2 };
    case 'I420':
    case 'I420A':
      return third ? { ...shared, redness: third, step: 1, across: 2, down: 2 } : null;
    case 'I422':
      return third ? { ...shared, redness: third, step: 1, across: 2, down: 1 } : null;
    case 'I444':
      return third ? { ...shared, redness: third, step: 1, across: 1, down: 1 } : null;
    default:
      return null;
  }
}

/** The packed colours of every `every`th pixel of a part of a picture, from its planes. */
export function coloursOfPlanes(planes: ColourPlanes, part: PicturePart, every: 1 | 2 = 1): Uint16Array {
  const { x, y } = part;
  const width = Math.floor(part.width / every);
  const height = Math.floor(part.height / every);
  const { bytes, brightness, blueness, redness, step, across, down } = planes;
  const seen = new Uint16Array(width * height);
  // one chroma stands for one or two pixels across
  const shift = across - 1;
  for (let row = 0; row < height; row++) {
    const bright = brightness.offset + (y + every * row) * brightness.stride + x;
    const chromaRow = Math.floor((y + every * row) / down);
    const blue = blueness.offset + chromaRow * blueness.stride;
    const red = redness.offset + chromaRow * redness.stride;
    const start = row * width;
    for (let column = 0; column < width; column++) {
      const chroma = step * ((x + every * column) >> shift);
      seen[start + column] = packColour(
        bytes[bright + every * column] as number,
        bytes[blue + chroma] ?? 128,
        bytes[red + chroma] ?? 128,
      );
    }
  }
  return seen;
}

let sheet: OffscreenCanvas | null = null;

/** The same of any picture, by drawing it: for turned, mirrored and deep-coloured film. Some twenty times slower. */
export function coloursByDrawing(
  draw: DrawPicture,
  shown: { readonly width: number; readonly height: number },
  part: PicturePart,
  every: 1 | 2 = 1,
): Uint16Array {
  const width = Math.floor(part.width / every);
  const height = Math.floor(part.height / every);
  if (sheet?.width !== width || sheet.height !== height) sheet = new OffscreenCanvas(width, height);
  const context = sheet.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas to draw on');
  draw(context, -part.x / every, -part.y / every, shown.width / every, shown.height / every);
  const { data } = context.getImageData(0, 0, width, height);
  const seen = new Uint16Array(width * height);
  for (let i = 0; i < seen.length; i++) {
    const red = data[4 * i] as number;
    const blue = data[4 * i + 2] as number;
    // brightness, blueness and redness of HD colours in the range film stores (ITU-R BT.709)
    const bright = 0.2126 * red + 0.7152 * (data[4 * i + 1] as number) + 0.0722 * blue;
    seen[i] = packColour(
      16 + (219 / 255) * bright,
      128 + (224 / 255) * ((blue - bright) / 1.8556),
      128 + (224 / 255) * ((red - bright) / 1.5748),
    );
  }
  return seen;
}
