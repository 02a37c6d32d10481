import { createBell } from './bell';
import { opened } from './frame-ledger';
import type { OpenedFilm } from './opened-film';
import type { DecoderPump, PumpSteering } from './pump-steering';

/** Images decoded at one time: the browser decodes each on a thread of its own. */
const atOnce = 3;

/**
 * Decodes film whose every picture is an image of its own (MJPEG): any frame is one picture away, so there is nothing to
 * run through and no group to begin.
 */
export function createImagePump(film: OpenedFilm, steering: PumpSteering): DecoderPump {
  const { order, read } = film.index;
  const pending = new Set<number>();
  let closed = false;
  /** The file can't be read: nothing more is tried until somebody asks again. */
  let stalled = false;
  const wake = createBell();

  const decode = async (frame: number): Promise<void> => {
    pending.add(frame);
    try {
      const packet = await read(order.codedOfFrame[frame] ?? -1);
      if (closed) return;
      const picture = packet ? await decodeImage(packet.data) : null;
      if (!picture) steering.lost([frame]);
      else steering.deliver(frame, opened(picture));
    } catch (problem) {
      stalled = true;
      if (!closed) steering.unreadable(problem);
    } finally {
      pending.delete(frame);
      wake.ring();
    }
  };

  const loop = async (): Promise<void> => {
    while (!closed) {
      await steering.room();
      if (closed) return;
      const goal =
        !stalled && pending.size < atOnce ? steering.next(null, (frame) => pending.has(frame)) : null;
      if (goal === null) await wake.wait();
      else void decode(goal);
    }
  };
  void loop();

  return {
    wake() {
      stalled = false;
      wake.ring();
    },
    again() {
      // each image is decoded on its own: there is nothing to begin again
      wake.ring();
    },
    close() {
      closed = true;
      wake.ring();
    },
  };
}

/** One JPEG as a decoder's picture; null when it is damaged. */
export async function decodeImage(data: Uint8Array): Promise<VideoFrame | null> {
  try {
    if (typeof ImageDecoder === 'undefined') {
      const bitmap = await createImageBitmap(new Blob([data.slice()], { type: 'image/jpeg' }));
      try {
        return new VideoFrame(bitmap, { timestamp: 0 });
      } finally {
        bitmap.close();
      }
    }
    const decoder = new ImageDecoder({ data: data.slice(), type: 'image/jpeg' });
    try {
      return (await decoder.decode()).image;
    } finally {
      decoder.close();
    }
  } catch (problem) {
    // the browser's words for an image it can't make sense of
    if (problem instanceof DOMException || problem instanceof TypeError || problem instanceof RangeError)
      return null;
    throw problem;
  }
}
