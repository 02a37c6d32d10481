import type { FrameSource } from '../video/frame-source';

const width = 480;

/** A small JPEG of the middle picture. */
export async function thumbnailOf(source: FrameSource): Promise<Blob> {
  const picture = await source.show(Math.floor(source.facts.table.starts.length / 2), 0);
  const height = Math.max(1, Math.round((width * picture.height) / picture.width));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no 2D context');
  picture.draw(context, 0, 0, width, height);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 });
}
