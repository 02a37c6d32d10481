import type { z } from 'zod';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { HostClient } from './host-client';

interface Watching<T> {
  /** What the operation that started the job promises. */
  readonly result: z.ZodType<T>;
  /** Aborting cancels the job on the host; the answer is then `cancelled`, after the host has cleaned up. */
  readonly signal: AbortSignal;
  /** Aborting stops watching; the job goes on. The answer is then `cancelled`. */
  readonly gone?: AbortSignal;
  /** Part done, 0 to 1 or null when it can't be told, and what the host is doing in words. */
  readonly onProgress: (share: number | null, words: string) => void;
  /** Milliseconds between looks. Our default, quick enough for a progress bar. */
  readonly everyMs?: number;
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits for a job of the host to end, telling how far it is meanwhile. */
export async function followJob<T>(
  host: Pick<HostClient, 'call'>,
  jobId: string,
  { result, signal, gone, onProgress, everyMs = 150 }: Watching<T>,
): Promise<Result<T>> {
  let asked = false;
  for (;;) {
    if (gone?.aborted) return failure('cancelled');
    if (signal.aborted && !asked) {
      asked = true;
      const stopped = await host.call('job/cancel', { jobId });
      if (!stopped.ok) return stopped;
    }
    const look = await host.call('job/look', { jobId });
    if (!look.ok) return look;
    switch (look.value.state) {
      case 'running':
        if (!asked) onProgress(look.value.share, look.value.words);
        break;
      case 'done':
        return success(result.parse(look.value.result));
      case 'failed':
        return { ok: false, error: look.value.error };
      case 'cancelled':
        return failure('cancelled');
    }
    await pause(everyMs);
  }
}
