import { skinContrast } from '#core/follow/skin-contrast';
import type { FramePicture, PicturePart } from './frame-source';

/** Where brightness and redness (Cr) of a picture lie in its bytes. */
export interface ColourPlanes {
  readonly bytes: Uint8Array;
  readonly brightness: PlaneLayout;
  readonly redness: PlaneLayout;
  /** Bytes from one redness to the next, and how many pixels across and down share one. */
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
  const shared = { bytes, brightness: first };
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

/** A part of a picture as it is seen for following, from its planes. */
export function contrastOfPlanes(planes: ColourPlanes, { x, y, width, height }: PicturePart): Uint8Array {
  const { bytes, brightness, redness, step, across, down } = planes;
  const seen = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const bright = brightness.offset + (y + row) * brightness.stride + x;
    const red = redness.offset + Math.floor((y + row) / down) * redness.stride;
    for (let column = 0; column < width; column++) {
      seen[row * width + column] = skinContrast(
        bytes[bright + column] ?? 0,
        bytes[red + step * Math.floor((x + column) / across)] ?? 128,
      );
    }
  }
  return seen;
}

let sheet: OffscreenCanvas | null = null;

/** The same of any picture, by drawing it: for turned, mirrored and deep-coloured film. Some twenty times slower. */
export function contrastByDrawing(
  draw: FramePicture['draw'],
  shown: { readonly width: number; readonly height: number },
  { x, y, width, height }: PicturePart,
): Uint8Array {
  if (sheet?.width !== width || sheet.height !== height) sheet = new OffscreenCanvas(width, height);
  const context = sheet.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas to draw on');
  draw(context, -x, -y, shown.width, shown.height);
  const { data } = context.getImageData(0, 0, width, height);
  const seen = new Uint8Array(width * height);
  for (let i = 0; i < seen.length; i++) {
    const red = data[4 * i] ?? 0;
    // brightness and redness of HD colours in the range film stores (ITU-R BT.709)
    const bright = 0.2126 * red + 0.7152 * (data[4 * i + 1] ?? 0) + 0.0722 * (data[4 * i + 2] ?? 0);
    seen[i] = skinContrast(16 + (219 / 255) * bright, 128 + (224 / 255) * ((red - bright) / 1.5748));
  }
  return seen;
}
