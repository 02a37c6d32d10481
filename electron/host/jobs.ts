import { failure, type Result, success } from '#core/host-contract/host-error';
import type { JobLook } from '#core/host-contract/operations/job-operations';
import { isAbort } from '../disk/is-abort';
import { hostJobsWords } from '#core/words/host-jobs';

export interface JobReport {
  /** Part done, 0 to 1, or null while it can't be told; and what it is doing, in words. */
  (share: number | null, words?: string): void;
}

export type JobWork = (signal: AbortSignal, report: JobReport) => Promise<Result<unknown>>;

interface Job {
  look: JobLook;
  readonly stop: AbortController;
  readonly ended: Promise<void>;
}

/** Ended jobs that are remembered, so that the window can still learn how they ended. */
const endedKept = 100;

/**
 * Long pieces of work of the host: each runs on its own, tells how far it is, and can be stopped. A job that throws for
 * a reason other than being stopped is a bug: it is told as one in the log and ends as failed.
 */
export class Jobs {
  private readonly jobs = new Map<string, Job>();

  constructor(
    private readonly makeId: () => string,
    /** Hears of every change: share done of each running job, null where it can't be told. */
    private readonly onWork: (shares: readonly (number | null)[]) => void = () => undefined,
  ) {}

  start(work: JobWork): string {
    const jobId = this.makeId();
    const stop = new AbortController();
    const report: JobReport = (share, words = '') => {
      const job = this.jobs.get(jobId);
      if (job?.look.state !== 'running') return;
      const part = share === null ? null : Math.min(1, Math.max(0, share));
      job.look = { state: 'running', share: part, words: words.slice(0, 200) };
      this.tellWork();
    };
    const run = async (): Promise<void> => {
      // the job is listed before its work begins
      await Promise.resolve();
      let look: JobLook;
      try {
        const result = await work(stop.signal, report);
        if (result.ok) look = { state: 'done', result: result.value };
        else
          look =
            result.error.code === 'cancelled'
              ? { state: 'cancelled' }
              : { state: 'failed', error: result.error };
      } catch (error) {
        if (stop.signal.aborted && isAbort(error)) look = { state: 'cancelled' };
        else {
          console.error(error);
          look = { state: 'failed', error: { code: 'host-failed', detail: {} } };
        }
      }
      const job = this.jobs.get(jobId);
      if (job) job.look = look;
      this.forgetOldest();
      this.tellWork();
    };
    const job: Job = { look: { state: 'running', share: null, words: '' }, stop, ended: run() };
    this.jobs.set(jobId, job);
    this.tellWork();
    return jobId;
  }

  look(jobId: string): Result<JobLook> {
    const job = this.jobs.get(jobId);
    return job ? success(job.look) : failure('not-found', { name: hostJobsWords('job') });
  }

  cancel(jobId: string): Result<Record<string, never>> {
    const job = this.jobs.get(jobId);
    if (!job) return failure('not-found', { name: hostJobsWords('job') });
    job.stop.abort();
    return success({});
  }

  /** Stops every job and waits until each has cleaned up after itself. */
  async close(): Promise<void> {
    const all = [...this.jobs.values()];
    for (const job of all) job.stop.abort();
    await Promise.all(all.map((job) => job.ended));
  }

  private tellWork(): void {
    this.onWork(
      [...this.jobs.values()].flatMap(({ look }) => (look.state === 'running' ? [look.share] : [])),
    );
  }

  private forgetOldest(): void {
    const ended = [...this.jobs].filter(([, job]) => job.look.state !== 'running');
    for (const [id] of ended.slice(0, Math.max(0, ended.length - endedKept))) this.jobs.delete(id);
  }
}
