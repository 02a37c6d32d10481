import type { ClipInput } from './frame-source';
import { readClipBytes } from './read-clip-bytes';

/** A header larger than this is not read again for its edit list (an hour at 60 a second has about 5 MB). */
const largestHeader = 64 * 2 ** 20;
/** Boxes looked at before giving up: a whole file has a handful, a fragmented one thousands after its header. */
const boxesAtMost = 32;

/** The content of an MP4's or MOV's `moov` box, or null when it is not found in one piece. */
export async function readMovieBox(clip: ClipInput, signal: AbortSignal): Promise<Uint8Array | null> {
  const found = await findTopBox(clip, 'moov', signal);
  if (!found || found.length < 0 || found.length > largestHeader) return null;
  const content = await readClipBytes(clip, found.from, found.length, signal);
  return content.byteLength === found.length ? content : null;
}

/** Whether pictures of an MP4 are listed in fragments beside its `moov` box. */
export const hasFragments = async (clip: ClipInput, signal: AbortSignal): Promise<boolean> =>
  (await findTopBox(clip, 'moof', signal)) !== null;

/** Where the content of the first box of a name lies, among the first boxes of a file that lie in no other. */
async function findTopBox(
  clip: ClipInput,
  name: string,
  signal: AbortSignal,
): Promise<{ readonly from: number; readonly length: number } | null> {
  let at = 0;
  for (let n = 0; n < boxesAtMost; n++) {
    const head = await readClipBytes(clip, at, 16, signal);
    if (head.byteLength < 8) return null;
    const view = new DataView(head.buffer, head.byteOffset, head.byteLength);
    const short = view.getUint32(0);
    if (short === 1 && head.byteLength < 16) return null;
    const size = short === 1 ? Number(view.getBigUint64(8)) : short;
    const start = short === 1 ? 16 : 8;
    if (String.fromCharCode(...head.subarray(4, 8)) === name)
      return { from: at + start, length: size - start };
    if (size < 8) return null;
    at += size;
  }
  return null;
}
