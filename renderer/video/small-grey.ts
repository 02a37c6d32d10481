import type { ColourPlanes } from './colour-part';
import type { SmallGrey } from '#core/follow/whole-picture';
import type { DrawPicture } from './picture-part';

type Size = { readonly width: number; readonly height: number };

/** A picture's brightness made small, from its planes: the mean of the first two pixels of each two rows is enough. */
export function smallGreyOfPlanes({ bytes, brightness }: ColourPlanes, shown: Size, step: number): SmallGrey {
  const width = Math.floor(shown.width / step);
  const height = Math.floor(shown.height / step);
  const grey = new Uint8Array(width * height);
  const half = step >> 1;
  for (let row = 0; row < height; row++) {
    const upper = brightness.offset + row * step * brightness.stride;
    const lower = upper + half * brightness.stride;
    for (let column = 0; column < width; column++) {
      const at = column * step;
      const sum =
        (bytes[upper + at] as number) +
        (bytes[upper + at + half] as number) +
        (bytes[lower + at] as number) +
        (bytes[lower + at + half] as number);
      grey[row * width + column] = sum >> 2;
    }
  }
  return { step, width, height, grey };
}

let sheet: OffscreenCanvas | null = null;

/** The same of any picture, by drawing it small. */
export function smallGreyByDrawing(draw: DrawPicture, shown: Size, step: number): SmallGrey {
  const width = Math.floor(shown.width / step);
  const height = Math.floor(shown.height / step);
  if (sheet?.width !== width || sheet.height !== height) sheet = new OffscreenCanvas(width, height);
  const context = sheet.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas to draw on');
  draw(context, 0, 0, width, height);
  const { data } = context.getImageData(0, 0, width, height);
  const grey = new Uint8Array(width * height);
  // brightness of HD colours (ITU-R BT.709)
  for (let i = 0; i < grey.length; i++)
    grey[i] =
      0.2126 * (data[4 * i] as number) +
      0.7152 * (data[4 * i + 1] as number) +
      0.0722 * (data[4 * i + 2] as number);
  return { step, width, height, grey };
}
