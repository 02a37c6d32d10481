import type { ClipInput } from './frame-source';
import { readClipBytes } from './read-clip-bytes';

/** A header larger than this is not read again for its edit list (an hour at 60 a second has about 5 MB). */
const largestHeader = 64 * 2 ** 20;
/** Boxes looked at before giving up: a whole file has a handful, a fragmented one thousands after its header. */
const boxesAtMost = 32;

/** The content of an MP4's or MOV's `moov` box, or null when it is not found in one piece. */
export async function readMovieBox(clip: ClipInput, signal: AbortSignal): Promise<Uint8Array | null> {
  let at = 0;
  for (let n = 0; n < boxesAtMost; n++) {
    const head = await readClipBytes(clip, at, 16, signal);
    if (head.byteLength < 8) return null;
    const view = new DataView(head.buffer, head.byteOffset, head.byteLength);
    const short = view.getUint32(0);
    if (short === 1 && head.byteLength < 16) return null;
    const size = short === 1 ? Number(view.getBigUint64(8)) : short;
    const name = String.fromCharCode(...head.subarray(4, 8));
    if (name === 'moov') {
      if (size < 8 || size > largestHeader) return null;
      const start = short === 1 ? 16 : 8;
      const content = await readClipBytes(clip, at + start, size - start, signal);
      return content.byteLength === size - start ? content : null;
    }
    if (size < 8) return null;
    at += size;
  }
  return null;
}
