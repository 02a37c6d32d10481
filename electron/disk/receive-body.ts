import { createWriteStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream as NodeReadableStream } from 'node:stream/web';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { fileFailure } from './file-errors';

interface Receiving {
  /** What is being received, as messages name it. */
  readonly name: string;
  readonly signal?: AbortSignal;
  /** Most bytes taken; more is `too-large`. */
  readonly limit?: number;
  readonly onBytes?: (bytes: number) => void;
}

class TooLarge extends Error {}

/**
 * Writes what the window sends into a new file as it comes, so that no more than a piece of it is in memory. On any
 * failure nothing is left; whoever broke off gets `cancelled`.
 */
export async function receiveBody(
  body: ReadableStream<Uint8Array>,
  file: string,
  { name, signal, limit = Number.POSITIVE_INFINITY, onBytes }: Receiving,
): Promise<Result<{ bytes: number }>> {
  let bytes = 0;
  const count = new Transform({
    transform(chunk: Uint8Array, _encoding, pass) {
      bytes += chunk.byteLength;
      onBytes?.(chunk.byteLength);
      if (bytes > limit) pass(new TooLarge());
      else pass(null, chunk);
    },
  });
  try {
    await pipeline(
      Readable.fromWeb(body as NodeReadableStream<Uint8Array>),
      count,
      createWriteStream(file, { flags: 'wx' }),
      signal ? { signal } : {},
    );
    return success({ bytes });
  } catch (error) {
    await rm(file, { force: true });
    if (error instanceof TooLarge) return failure('too-large', { name });
    if (brokenOff(error)) return failure('cancelled', { name });
    return fileFailure(error, name, 'writing');
  }
}

/** Whether the sender went away, or somebody said stop. */
function brokenOff(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = (error as NodeJS.ErrnoException).code;
  return (
    error.name === 'AbortError' ||
    code === undefined ||
    ['ERR_STREAM_PREMATURE_CLOSE', 'ECONNRESET', 'ABORT_ERR'].includes(code)
  );
}
