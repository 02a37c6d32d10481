import {
  type PlainWorker,
  type WatchedWorker,
  type WorkerPatience,
  watchedWorker,
} from '../workers/watched-worker';
import { type JobAnswer, type JobInput, type JobKind, doJob, type BackgroundJob } from './background-jobs';

/** Measures whole swims beside the window, one job after the other, for screens that show many. */
export interface BackgroundReadings {
  /** Null where the signal was aborted before the answer was there: a job that waits is then never done. */
  ask<K extends JobKind>(kind: K, input: JobInput<K>, signal: AbortSignal): Promise<JobAnswer<K> | null>;
}

interface Waiting {
  readonly job: BackgroundJob;
  readonly signal: AbortSignal;
  readonly tell: (answer: JobAnswer<JobKind> | null) => void;
}

export type BackgroundWorker = PlainWorker<BackgroundJob, JobAnswer<JobKind>>;

/** Twenty seconds. */
const patience: WorkerPatience = { checkMs: 250, silentChecks: 80 };
/** A worker that was asked nothing for this long is ended, so that a screen left behind holds no memory, ms. */
const idleMs = 30_000;

/**
 * Jobs for a worker that is started when it is first asked, and ended when nothing more is asked. One that fails or stays
 * silent is put away, and this thread does the jobs from then on.
 */
export function backgroundReadings(startWorker: () => BackgroundWorker): BackgroundReadings {
  const waiting: Waiting[] = [];
  let running: Waiting | null = null;
  let worker: WatchedWorker<BackgroundJob> | null = null;
  let failed = false;
  let idle: ReturnType<typeof setTimeout> | undefined;

  const end = (): void => {
    worker?.end();
    worker = null;
  };
  const lost = (): void => {
    failed = true;
    clearTimeout(idle);
    const last = running;
    running = null;
    if (last) waiting.unshift(last);
    next();
  };
  const heard = (answer: JobAnswer<JobKind>): void => {
    worker?.rest();
    const done = running;
    running = null;
    done?.tell(done.signal.aborted ? null : answer);
    next();
  };
  const next = (): void => {
    if (running) return;
    const one = waiting.shift();
    if (!one) {
      if (worker) idle = setTimeout(end, idleMs);
      return;
    }
    if (one.signal.aborted) {
      one.tell(null);
      next();
    } else if (failed) {
      one.tell(doJob(one.job));
      next();
    } else {
      clearTimeout(idle);
      running = one;
      worker ??= watchedWorker(startWorker(), patience, { heard, lost });
      worker.watch();
      worker.send(one.job);
    }
  };
  return {
    ask: (kind, input, signal) =>
      new Promise((resolve) => {
        const job = { kind, input } as BackgroundJob;
        waiting.push({ job, signal, tell: resolve as Waiting['tell'] });
        next();
      }),
  };
}
