import type { FramePicture, PicturePart } from './frame-source';

/** A part of a plane of brightness: rows copied out, under a millisecond. */
export function greyOfPlane(
  planes: Uint8Array,
  { offset, stride }: PlaneLayout,
  { x, y, width, height }: PicturePart,
): Uint8Array {
  const grey = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const start = offset + (y + row) * stride + x;
    grey.set(planes.subarray(start, start + width), row * width);
  }
  return grey;
}

let sheet: OffscreenCanvas | null = null;

/** A part of any picture, by drawing it: for turned, mirrored and deep-coloured film. Some twenty times slower. */
export function greyByDrawing(
  draw: FramePicture['draw'],
  shown: { readonly width: number; readonly height: number },
  { x, y, width, height }: PicturePart,
): Uint8Array {
  if (sheet?.width !== width || sheet.height !== height) sheet = new OffscreenCanvas(width, height);
  const context = sheet.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas to draw on');
  draw(context, -x, -y, shown.width, shown.height);
  const { data } = context.getImageData(0, 0, width, height);
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) {
    // brightness of HD colours (ITU-R BT.709), in 1024ths
    grey[i] = (218 * (data[4 * i] ?? 0) + 732 * (data[4 * i + 1] ?? 0) + 74 * (data[4 * i + 2] ?? 0)) >> 10;
  }
  return grey;
}
