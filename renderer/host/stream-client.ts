import { z } from 'zod';
import { failure, hostErrorSchema, type Result } from '#core/host-contract/host-error';
import { exportedSchema, streamPaths } from '#core/host-contract/operations';
import { arrivedBundleSchema } from '#core/host-contract/operations/bundle-operations';
import { arrivedClipSchema } from '#core/host-contract/operations/clip-operations';
import { makeId } from './make-id';
import type { HostClient } from './host-client';

/** Reads an answer of the host against what it must be; an answer of another shape is a bug and throws. */
export function readAnswer<T>(schema: z.ZodType<T>, answer: unknown): Result<T> {
  const shape = z.union([
    z.strictObject({ ok: z.literal(true), value: schema }),
    z.strictObject({ ok: z.literal(false), error: hostErrorSchema }),
  ]);
  return shape.parse(answer) as Result<T>;
}

/**
 * How bytes are sent: as they are, or as a stream. Over Electron's own scheme a Blob, and so a file too, would first be put
 * together in the memory of the program that holds the window; HTTP, on the other side, takes no stream.
 */
export type SentAs = 'blob' | 'stream';

async function put<T>(
  address: string,
  body: Blob,
  schema: z.ZodType<T>,
  { as, signal }: { readonly as: SentAs; readonly signal?: AbortSignal },
): Promise<Result<T>> {
  try {
    const response = await fetch(address, {
      method: 'PUT',
      ...(as === 'stream' ? { body: body.stream(), duplex: 'half' } : { body }),
      ...(signal ? { signal } : {}),
    } as RequestInit);
    if (response.status === 403) return failure('not-allowed', { window: 1 });
    if (!response.ok) return failure('host-unreachable', { status: response.status });
    return readAnswer(schema, await response.json());
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return failure('cancelled');
    if (error instanceof TypeError) return failure('host-unreachable');
    throw error;
  }
}

/** Milliseconds between looks at how much of a clip has arrived: quick enough for a progress bar. */
const lookEveryMs = 150;

/** The byte streams of the contract, alike on both transports: they ride on the page's own origin. */
export function createStreamClient(
  call: HostClient['call'],
  as: SentAs,
): Omit<HostClient, 'transport' | 'call' | 'pathOf'> {
  return {
    clipAddress: streamPaths.clip,
    copyAddress: streamPaths.copy,
    copyPieceAddress: streamPaths.copyPiece,
    arrivedAddress: streamPaths.arrived,
    thumbnailAddress: streamPaths.thumbnail,
    lettersAddress: streamPaths.letters,
    exportAddress: streamPaths.export,
    sendBundle: (file) => put(streamPaths.bundle, file, arrivedBundleSchema, { as }),
    sendThumbnail: (swimId, jpeg) => put(streamPaths.thumbnail(swimId), jpeg, z.null(), { as }),
    sendExport: (name, bytes) => put(streamPaths.export(name), bytes, exportedSchema, { as }),
    sendClip: async (file, name, { signal, onProgress }) => {
      if (signal.aborted) return failure('cancelled', { name });
      const arrivalId = makeId();
      // what has gone out says little, and over a scheme of one's own nothing: the host counts what came in
      const looks = setInterval(() => {
        void call('clip/arriving', { arrivalId }).then((look) => {
          if (look.ok && look.value.bytes !== null && !signal.aborted)
            onProgress(Math.min(1, look.value.bytes / file.size));
        });
      }, lookEveryMs);
      // the host may be reading the file by itself: to break off here would not stop it
      const stop = (): void => void call('clip/stop-arriving', { arrivalId });
      signal.addEventListener('abort', stop, { once: true });
      try {
        const sent = await put(streamPaths.arrive(name, arrivalId), file, arrivedClipSchema, { as, signal });
        return !sent.ok && sent.error.code === 'cancelled' ? failure('cancelled', { name }) : sent;
      } finally {
        clearInterval(looks);
        signal.removeEventListener('abort', stop);
      }
    },
  };
}
