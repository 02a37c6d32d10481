import { success } from '#core/host-contract/host-error';
import type { Still } from '#core/host-contract/operations/media-operations';
import type { ClipFacts } from '../../../renderer/video/frame-source';
import { createStillsSource } from '../../../renderer/video/stills-source';

const [width, height] = [64, 36];

/** A still of one brightness: the frame's number. */
async function still(frame: number): Promise<Still> {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  context.fillStyle = `rgb(${frame} ${frame} ${frame})`;
  context.fillRect(0, 0, width, height);
  const jpeg = new Uint8Array(
    await (await canvas.convertToBlob({ type: 'image/jpeg', quality: 1 })).arrayBuffer(),
  );
  return { frame, jpeg: btoa(String.fromCharCode(...jpeg)) };
}

/** The brightness a canvas shows of a still, and after its source was closed, painted once more on an empty canvas. */
export async function stillsOnStage(): Promise<readonly number[]> {
  const facts = {
    ...{ width, height },
    table: { ticksPerSecond: 30, starts: Array.from({ length: 256 }, (_, n) => n), endTick: 256 },
  } as unknown as ClipFacts;
  const source = createStillsSource({
    facts,
    budgetBytes: 0,
    ask: async ({ first, last }) =>
      success(await Promise.all(Array.from({ length: last - first + 1 }, (_, n) => still(first + n)))),
  });
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas');
  const shown = (): number => context.getImageData(width / 2, height / 2, 1, 1).data[0] ?? -1;
  const seen: number[] = [];
  const picture = await source.show(200, 0);
  picture.draw(context, 0, 0, width, height);
  seen.push(shown());
  source.close();
  context.clearRect(0, 0, width, height);
  picture.draw(context, 0, 0, width, height);
  seen.push(shown());
  return seen;
}
