import { failure, type HostError, type Result, success } from '#core/host-contract/host-error';
import type { HostClient } from '../host/host-client';
import type { ClipFacts } from '../video/frame-source';
import { openFrameSource } from '../video/open-frame-source';
import { readClipFacts } from '../video/read-clip-facts';
import { type ClipToAdd, inputOf, nameOf } from './clip-to-add';
import { thumbnailOf } from './thumbnail';

const named = (error: HostError, name: string): Result<never> =>
  failure(error.code, { ...error.detail, name });

/** What the container tells of a clip; a clip this window can't decode is told apart from one that is no film. */
export async function factsOf(
  adding: ClipToAdd,
  host: HostClient,
  signal: AbortSignal,
): Promise<Result<ClipFacts>> {
  const name = nameOf(adding);
  const read = await readClipFacts(inputOf(adding, host), signal);
  if (!read.ok) return named(read.error, name);
  if (!read.value.decodable) return failure('unsupported-codec', { name, codec: read.value.codec });
  return success(read.value);
}

/** A small picture from the middle of the clip; null when it can't be had, which is no reason not to add the clip. */
export async function pictureOf(
  adding: ClipToAdd,
  host: HostClient,
  signal: AbortSignal,
): Promise<Blob | null> {
  const source = await openFrameSource(inputOf(adding, host), { signal });
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
