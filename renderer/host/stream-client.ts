import { z } from 'zod';
import { failure, hostErrorSchema, type Result } from '#core/host-contract/host-error';
import { exportedSchema, streamPaths } from '#core/host-contract/operations';
import { arrivedBundleSchema } from '#core/host-contract/operations/bundle-operations';
import { arrivedClipSchema } from '#core/host-contract/operations/clip-operations';
import type { HostClient } from './host-client';

/** Reads an answer of the host against what it must be; an answer of another shape is a bug and throws. */
export function readAnswer<T>(schema: z.ZodType<T>, answer: unknown): Result<T> {
  const shape = z.union([
    z.strictObject({ ok: z.literal(true), value: schema }),
    z.strictObject({ ok: z.literal(false), error: hostErrorSchema }),
  ]);
  return shape.parse(answer) as Result<T>;
}

async function put<T>(address: string, body: Blob, schema: z.ZodType<T>): Promise<Result<T>> {
  let response: Response;
  try {
    response = await fetch(address, { method: 'PUT', body });
  } catch (error) {
    if (error instanceof TypeError) return failure('host-unreachable');
    throw error;
  }
  if (response.status === 403) return failure('not-allowed', { window: 1 });
  return readAnswer(schema, await response.json());
}

/** The byte streams of the contract, alike on both transports: they ride on the page's own origin. */
export function createStreamClient(): Omit<HostClient, 'transport' | 'call'> {
  return {
    clipAddress: streamPaths.clip,
    copyAddress: streamPaths.copy,
    copyPieceAddress: streamPaths.copyPiece,
    arrivedAddress: streamPaths.arrived,
    thumbnailAddress: streamPaths.thumbnail,
    lettersAddress: streamPaths.letters,
    exportAddress: streamPaths.export,
    sendBundle: (file) => put(streamPaths.bundle, file, arrivedBundleSchema),
    sendThumbnail: (swimId, jpeg) => put(streamPaths.thumbnail(swimId), jpeg, z.null()),
    sendExport: (name, bytes) => put(streamPaths.export(name), bytes, exportedSchema),
    sendClip: (file, name, { signal, onProgress }) =>
      new Promise((resolve) => {
        // fetch can't tell how much of a body has gone; XMLHttpRequest can
        const request = new XMLHttpRequest();
        request.open('PUT', streamPaths.arrive(name));
        request.upload.onprogress = (event) => {
          if (event.lengthComputable) onProgress(event.loaded / event.total);
        };
        request.onabort = () => resolve(failure('cancelled', { name }));
        request.onerror = () => resolve(failure('host-unreachable'));
        request.onload = () => {
          if (request.status !== 200) resolve(failure('host-unreachable'));
          else resolve(readAnswer(arrivedClipSchema, JSON.parse(request.responseText)));
        };
        if (signal.aborted) return resolve(failure('cancelled', { name }));
        signal.addEventListener('abort', () => request.abort(), { once: true });
        request.send(file);
        return undefined;
      }),
  };
}
