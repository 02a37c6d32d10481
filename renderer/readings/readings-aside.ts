import { type AsideAnswer, type AsideInput, type AsideKind, doAside, type ToAside } from './aside-jobs';

/** Measures whole swims beside the window, one job after the other, for screens that show many. */
export interface ReadingsAside {
  /** Null where the signal was aborted before the answer was there: a job that waits is then never done. */
  ask<K extends AsideKind>(
    kind: K,
    input: AsideInput<K>,
    signal: AbortSignal,
  ): Promise<AsideAnswer<K> | null>;
}

interface Waiting {
  readonly job: ToAside;
  readonly signal: AbortSignal;
  readonly tell: (answer: AsideAnswer<AsideKind> | null) => void;
}

/** The part of a worker that is used. */
export type AsideWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

/** A worker that owes an answer for this long is taken for dead, ms. */
const silenceMs = 20_000;
/** A worker that was asked nothing for this long is ended, so that a screen left behind holds no memory, ms. */
const idleMs = 30_000;

/**
 * Jobs for a worker that is started when it is first asked, and ended when nothing more is asked. One that fails or stays
 * silent is put away, and this thread does the jobs from then on.
 */
export function readingsAside(startWorker: () => AsideWorker): ReadingsAside {
  const waiting: Waiting[] = [];
  let running: Waiting | null = null;
  let worker: AsideWorker | null = null;
  let failed = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const end = (): void => {
    worker?.terminate();
    worker = null;
  };
  const fail = (): void => {
    failed = true;
    clearTimeout(timer);
    end();
    const last = running;
    running = null;
    if (last) waiting.unshift(last);
    next();
  };
  const started = (): AsideWorker => {
    const made = startWorker();
    made.addEventListener('message', ({ data }: MessageEvent<AsideAnswer<AsideKind>>) => {
      if (made !== worker) return;
      clearTimeout(timer);
      const done = running;
      running = null;
      done?.tell(done.signal.aborted ? null : data);
      next();
    });
    for (const kind of ['error', 'messageerror'] as const)
      made.addEventListener(kind, () => {
        if (made === worker) fail();
      });
    return made;
  };
  const next = (): void => {
    if (running) return;
    const one = waiting.shift();
    if (!one) {
      if (worker) timer = setTimeout(end, idleMs);
      return;
    }
    if (one.signal.aborted) {
      one.tell(null);
      next();
    } else if (failed) {
      one.tell(doAside(one.job));
      next();
    } else {
      clearTimeout(timer);
      running = one;
      timer = setTimeout(fail, silenceMs);
      worker ??= started();
      worker.postMessage(one.job);
    }
  };
  return {
    ask: (kind, input, signal) =>
      new Promise((resolve) => {
        const job = { kind, input } as ToAside;
        waiting.push({ job, signal, tell: resolve as Waiting['tell'] });
        next();
      }),
  };
}
