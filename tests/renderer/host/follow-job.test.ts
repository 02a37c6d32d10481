import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { success } from '#core/host-contract/host-error';
import type { JobLook } from '#core/host-contract/operations/job-operations';
import { followJob } from '../../../renderer/host/follow-job';
import type { HostClient } from '../../../renderer/host/host-client';

/** A host whose job answers each look in turn, and is cancelled at the next look once asked. */
function hostOf(looks: readonly JobLook[]) {
  const left = [...looks];
  let cancelled = false;
  const call = (async (name: string) => {
    if (name === 'job/cancel') {
      cancelled = true;
      return success({});
    }
    return success(cancelled ? { state: 'cancelled' } : left.shift());
  }) as HostClient['call'];
  return { call };
}
const result = z.strictObject({ made: z.number() });
const running = (share: number): JobLook => ({ state: 'running', share, words: 'copying' });

describe('following a job', () => {
  it('tells each step and gives the checked result', async () => {
    const seen: (number | null)[] = [];
    const host = hostOf([running(0.1), running(0.6), { state: 'done', result: { made: 4 } }]);
    const onProgress = (share: number | null): void => void seen.push(share);
    const done = await followJob(host, 'j', {
      result,
      signal: new AbortController().signal,
      onProgress,
      everyMs: 1,
    });
    expect(done).toEqual(success({ made: 4 }));
    expect(seen).toEqual([0.1, 0.6]);
  });

  it('cancels on the host when aborted and waits for it', async () => {
    const stop = new AbortController();
    const host = hostOf([running(0.1), running(0.2), running(0.3)]);
    const done = await followJob(host, 'j', {
      result,
      signal: stop.signal,
      onProgress: () => stop.abort(),
      everyMs: 1,
    });
    expect(done).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });

  it('throws on a result that is not what was promised: that is a bug', async () => {
    const host = hostOf([{ state: 'done', result: { made: 'four' } }]);
    const followed = followJob(host, 'j', {
      result,
      signal: new AbortController().signal,
      onProgress: () => undefined,
      everyMs: 1,
    });
    await expect(followed).rejects.toThrow();
  });
});
