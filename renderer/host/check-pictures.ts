import type { Result } from '#core/host-contract/host-error';
import { type PicturesChecked, picturesCheckedSchema } from '#core/host-contract/operations/media-operations';
import { followJob } from './follow-job';
import type { HostClient } from './host-client';

interface Wanted {
  readonly of: { readonly clipId: string } | { readonly swimId: string };
  readonly track: number;
  readonly frames: number;
  readonly fields: boolean;
  readonly signal: AbortSignal;
  /** Share of the film that has been checked, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

/** Has the host's tools decode a whole film behind all other work, to count damaged pictures. Aborting ends it. */
export async function checkPictures(
  host: Pick<HostClient, 'call'>,
  { signal, onProgress, ...film }: Wanted,
): Promise<Result<PicturesChecked>> {
  const started = await host.call('media/check', film);
  if (!started.ok) return started;
  return followJob(host, started.value.jobId, {
    result: picturesCheckedSchema,
    signal,
    onProgress: (share) => onProgress?.(share ?? 0),
    // long work that nobody waits for
    everyMs: 500,
  });
}
