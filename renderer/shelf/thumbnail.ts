import type { ClipInput, FrameSource } from '../video/frame-source';
import { openFrameSource } from '../video/open-frame-source';

const width = 480;

/** A small JPEG from the middle of a film; null when it can't be had, which is no reason to go without the film. */
export async function pictureOf(film: ClipInput, signal: AbortSignal): Promise<Blob | null> {
  const source = await openFrameSource(film, { signal });
  if (!source.ok) return null;
  try {
    return await thumbnailOf(source.value);
  } catch (error) {
    // a picture in the middle that is lost, or the coach has gone on
    if (error instanceof Error && !(error instanceof TypeError)) return null;
    throw error;
  } finally {
    source.value.close();
  }
}

async function thumbnailOf(source: FrameSource): Promise<Blob> {
  const picture = await source.show(Math.floor(source.facts.table.starts.length / 2), 0);
  const height = Math.max(1, Math.round((width * picture.height) / picture.width));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no 2D context');
  picture.draw(context, 0, 0, width, height);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 });
}
