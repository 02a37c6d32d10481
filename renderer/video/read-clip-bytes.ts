import type { ClipInput } from './frame-source';

/** Some bytes of a clip; fewer or none where there are no more, or where they can't be had in parts. */
export async function readClipBytes(
  clip: ClipInput,
  start: number,
  length: number,
  signal: AbortSignal,
): Promise<Uint8Array> {
  if ('blob' in clip) return bytesOfBlob(clip.blob.slice(start, start + length));
  return bytesOfRange(clip.address, `bytes=${start}-${start + length - 1}`, signal);
}

/** The last bytes of a clip, all of it where it has no more. */
export async function readClipEnd(clip: ClipInput, length: number, signal: AbortSignal): Promise<Uint8Array> {
  if ('blob' in clip) return bytesOfBlob(clip.blob.slice(-length));
  return bytesOfRange(clip.address, `bytes=-${length}`, signal);
}

/** How many bytes a clip has; infinity where that isn't told. */
export async function clipLength(clip: ClipInput, signal: AbortSignal): Promise<number> {
  if ('blob' in clip) return clip.blob.size;
  const answer = await fetch(clip.address, { headers: { Range: 'bytes=0-0' }, signal });
  await answer.body?.cancel();
  const told = Number(/\/(\d+)$/.exec(answer.headers.get('Content-Range') ?? '')?.[1] ?? Number.NaN);
  return Number.isFinite(told) ? told : Number.POSITIVE_INFINITY;
}

const bytesOfBlob = async (blob: Blob): Promise<Uint8Array> => new Uint8Array(await blob.arrayBuffer());

async function bytesOfRange(address: string, range: string, signal: AbortSignal): Promise<Uint8Array> {
  const answer = await fetch(address, { headers: { Range: range }, signal });
  if (answer.status === 206) return new Uint8Array(await answer.arrayBuffer());
  await answer.body?.cancel();
  return new Uint8Array();
}
