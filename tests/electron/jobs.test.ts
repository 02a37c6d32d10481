import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it, vi } from 'vitest';
import { failure, success } from '#core/host-contract/host-error';
import { Jobs } from '#electron/host/jobs';

const jobs = (): Jobs => {
  let count = 0;
  return new Jobs(() => `job-${++count}`);
};
/** Long only for what fails. */
const patient = { timeout: 20_000 };
const ended = (all: Jobs, jobId: string) =>
  vi.waitFor(() => {
    const look = all.look(jobId);
    if (!look.ok || look.value.state === 'running') throw new Error('still running');
    return look.value;
  }, patient);

describe('a job of the host', () => {
  it('tells how far it is, within 0 and 1, and then what it made', async () => {
    const all = jobs();
    let go: () => void = () => undefined;
    const gate = new Promise<void>((resolve) => {
      go = resolve;
    });
    const jobId = all.start(async (_signal, report) => {
      report(1.7, 'almost');
      await gate;
      return success({ made: 3 });
    });
    await vi.waitFor(
      () => expect(all.look(jobId)).toEqual(success({ state: 'running', share: 1, words: 'almost' })),
      patient,
    );
    go();
    expect(await ended(all, jobId)).toEqual({ state: 'done', result: { made: 3 } });
  });

  it('is stopped when asked, whether its work throws or answers', async () => {
    const all = jobs();
    const throws = all.start(async (signal) => {
      await wait(60_000, undefined, { signal });
      return success(null);
    });
    const answers = all.start(async (signal) => {
      while (!signal.aborted) await wait(5);
      return failure('cancelled');
    });
    await wait(10);
    all.cancel(throws);
    all.cancel(answers);
    expect(await ended(all, throws)).toEqual({ state: 'cancelled' });
    expect(await ended(all, answers)).toEqual({ state: 'cancelled' });
  });

  it('ends as failed with its own error, or as a bug that is written to the log', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const all = jobs();
    const full = all.start(async () => failure('disk-full', { name: 'x' }));
    const bug = all.start(() => Promise.reject(new Error('a bug')));
    expect(await ended(all, full)).toEqual({
      state: 'failed',
      error: { code: 'disk-full', detail: { name: 'x' } },
    });
    expect(await ended(all, bug)).toMatchObject({ state: 'failed', error: { code: 'host-failed' } });
    expect(log).toHaveBeenCalledOnce();
    log.mockRestore();
  });

  it('is not found when it never was', () => {
    expect(jobs().look('nobody')).toMatchObject({ ok: false, error: { code: 'not-found' } });
    expect(jobs().cancel('nobody')).toMatchObject({ ok: false, error: { code: 'not-found' } });
  });

  it('has cleaned up when the host has closed', async () => {
    const all = jobs();
    let clean = false;
    all.start(async (signal) => {
      while (!signal.aborted) await wait(5);
      await wait(20);
      clean = true;
      return failure('cancelled');
    });
    await wait(10);
    await all.close();
    expect(clean).toBe(true);
  });
});
