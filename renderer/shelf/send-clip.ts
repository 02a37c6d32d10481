import type { Result } from '#core/host-contract/host-error';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import { beginWork } from '../ui/work-in-hand';
import type { HostClient } from '../host/host-client';

/** Sends a file to the library, as long work that the window shows. */
export async function sendClip(
  host: Pick<HostClient, 'sendClip'>,
  file: File,
  { signal, onProgress }: Parameters<HostClient['sendClip']>[2],
): Promise<Result<ArrivedClip>> {
  const work = beginWork();
  try {
    return await host.sendClip(file, file.name, {
      signal,
      onProgress: (share) => {
        work.tell(share);
        onProgress(share);
      },
    });
  } finally {
    work.end();
  }
}
