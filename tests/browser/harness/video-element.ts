import { readCode } from './picture-code';
import type { Seen } from './page';

/** The baseline: an HTML video element, seeking to the middle of a frame. */
let element: HTMLVideoElement | null = null;

export async function openElement(address: string): Promise<void> {
  element = document.createElement('video');
  element.muted = true;
  element.preload = 'auto';
  element.src = address;
  document.body.replaceChildren(element);
  const opened = element;
  await new Promise((resolve, reject) => {
    opened.onloadeddata = resolve;
    opened.onerror = () => reject(new Error('the video element can not open it'));
  });
}

/** Seeks to each time (media seconds), draws, and reads the number drawn; `frames` are only written down. */
export async function seekElement(
  times: readonly number[],
  frames: readonly number[],
  budgetMilliseconds: number,
): Promise<Seen[]> {
  const video = element;
  if (!video) throw new Error('no clip open');
  const canvas = document.createElement('canvas');
  canvas.width = Math.min(1280, video.videoWidth);
  canvas.height = Math.round((canvas.width * video.videoHeight) / video.videoWidth);
  const context = canvas.getContext('2d', { alpha: false });
  const reader = new OffscreenCanvas(640, 360).getContext('2d', { willReadFrequently: true });
  if (!context || !reader) throw new Error('no canvas');
  const seen: Seen[] = [];
  const start = performance.now();
  for (const [index, time] of times.entries()) {
    if (performance.now() - start > budgetMilliseconds) break;
    const began = performance.now();
    const sought = new Promise((resolve) => {
      video.onseeked = resolve;
    });
    video.currentTime = time;
    await sought;
    context.drawImage(video, 0, 0, canvas.width, canvas.height);
    const took = performance.now() - began;
    reader.drawImage(video, 0, 0, 640, 360);
    seen.push({
      frame: frames[index] ?? -1,
      number: readCode(reader.getImageData(0, 0, 640, 360).data, 640, 360),
      took,
    });
  }
  return seen;
}
