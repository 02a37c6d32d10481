import { type Result, success } from '#core/host-contract/host-error';
import { makeDecoderInWorker } from './decoder-in-worker';
import type { ClipInput } from './frame-source';
import { decodeImage } from './image-pump';
import { openFilmInWorker } from './open-film-in-worker';
import type { OpenedFilm } from './opened-film';

interface Checking {
  readonly signal: AbortSignal;
  /** Share of the film that has been looked at, 0 to 1. */
  readonly onProgress: (share: number) => void;
}

/** Pictures waiting in the decoder: few, as nothing hurries. */
const queueDepth = 3;
/** Pictures fed between two rests; it rests as long as it worked, so that the window keeps a processor (our default). */
const stretch = 12;

/** How many frames of a film this window's decoder doesn't give: the whole of it is decoded, and nothing is kept. */
export async function checkFilm(clip: ClipInput, checking: Checking): Promise<Result<number>> {
  const opened = await openFilmInWorker(clip, checking.signal);
  if (!opened.ok) return opened;
  const film = opened.value;
  try {
    const came = new Set<number>();
    const { decoding } = film;
    if (decoding === 'images') await passImages(film, came, checking);
    else if (decoding) await passFilm(film, decoding, came, checking);
    const { codedOfFrame } = film.index.order;
    return success(codedOfFrame.filter((coded) => !came.has(coded)).length);
  } finally {
    film.close();
  }
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

async function passImages(
  { index }: OpenedFilm,
  came: Set<number>,
  { signal, onProgress }: Checking,
): Promise<void> {
  for (const [frame, coded] of index.order.codedOfFrame.entries()) {
    signal.throwIfAborted();
    const began = performance.now();
    const packet = await index.read(coded);
    const picture = packet && (await decodeImage(packet.data));
    picture?.close();
    if (picture) came.add(coded);
    onProgress(frame / index.order.codedOfFrame.length);
    await pause(performance.now() - began);
  }
}

/** Through the film from key picture to key picture; one that the decoder dies on ends its group. */
async function passFilm(
  { index }: OpenedFilm,
  config: VideoDecoderConfig,
  came: Set<number>,
  { signal, onProgress }: Checking,
): Promise<void> {
  const { pictures, order } = index;
  let dead = false;
  let last = -1;
  let wake: (() => void) | null = null;
  const hear = (): void => wake?.();
  const decoder = makeDecoderInWorker({
    output: (picture) => {
      last = Math.max(last, Math.round(picture.timestamp / 1000));
      came.add(Math.round(picture.timestamp / 1000));
      picture.close();
      hear();
    },
    died: () => {
      dead = true;
      hear();
    },
    taken: hear,
  });
  const room = async (): Promise<void> => {
    while (!dead && !signal.aborted && decoder.queued() >= queueDepth)
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
  };
  /** From a key picture to the end, or to where the decoder dies. */
  const passFrom = async (key: number): Promise<void> => {
    decoder.begin(config);
    let next = key;
    let began = performance.now();
    for await (const { type, data } of index.readFrom(key)) {
      await room();
      signal.throwIfAborted();
      if (dead || next >= pictures.length) break;
      decoder.decode({ type, timestamp: next * 1000, data });
      next += 1;
      if (next % stretch !== 0) continue;
      onProgress(next / pictures.length);
      await pause(performance.now() - began);
      began = performance.now();
    }
    if (!dead) await decoder.flush();
    signal.throwIfAborted();
  };
  signal.addEventListener('abort', hear);
  try {
    let key = order.keyOfFrame[0] ?? -1;
    while (key >= 0) {
      dead = false;
      await passFrom(key);
      if (!dead) return;
      // pictures fed behind the one it died on may belong to the next group
      const after = Math.max(key, last);
      key = pictures.findIndex((picture, coded) => coded > after && picture.key);
    }
  } finally {
    signal.removeEventListener('abort', hear);
    decoder.close();
  }
}
