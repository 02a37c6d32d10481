import type { SeenPicture } from '#core/see/cut-square';
import type { FramePicture } from '../video/frame-source';

/** Pictures are looked at no larger than this along their longer side: a body's square is cut down to 256 pixels anyway. */
const longest = 1280;

let sheet: OffscreenCanvas | null = null;

/** A picture's own pixels, drawn as it is shown. The caller's own. */
export function picturePixels(picture: FramePicture): SeenPicture {
  const step = Math.max(1, Math.max(picture.width, picture.height) / longest);
  const [width, height] = [Math.round(picture.width / step), Math.round(picture.height / step)];
  if (sheet?.width !== width || sheet.height !== height) sheet = new OffscreenCanvas(width, height);
  const context = sheet.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas to draw on');
  picture.draw(context, 0, 0, width, height);
  return { width, height, rgba: context.getImageData(0, 0, width, height).data, step };
}
