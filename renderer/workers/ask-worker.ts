import { type PlainWorker, type WatchedWorker, type WorkerPatience, watchedWorker } from './watched-worker';

/** A worker that answers one question at a time. */
export interface AskedWorker<To, From> {
  /**
   * `hear` gets every message until it gives an answer: `undefined` waits for the next. Rejects with an AbortError when
   * stopped, which ends the worker, and with an Error when it is lost or `hear` throws.
   */
  ask<T>(question: Question<To, From, T>, signal?: AbortSignal): Promise<T>;
  end(): void;
  isOver(): boolean;
}

export interface Question<To, From, T> {
  readonly message: To;
  readonly transfer?: Transferable[];
  /** Why it was stopped, in an AbortError's words. */
  readonly stopped: string;
  hear(message: From): T | undefined;
}

export function askedWorker<To, From>(
  worker: PlainWorker<To, From>,
  patience: WorkerPatience,
): AskedWorker<To, From> {
  let open: { hear(message: From): void; fail(problem: Error): void } | null = null;
  const link: WatchedWorker<To> = watchedWorker(worker, patience, {
    heard: (message) => open?.hear(message),
    lost: (_why, words) => open?.fail(new Error(words)),
  });
  return {
    ask: <T>({ message, transfer, stopped, hear }: Question<To, From, T>, signal?: AbortSignal) =>
      new Promise<T>((resolve, reject) => {
        const settle = (done: () => void): void => {
          signal?.removeEventListener('abort', stop);
          open = null;
          link.rest();
          done();
        };
        const stop = (): void => {
          link.end();
          settle(() => reject(new DOMException(stopped, 'AbortError')));
        };
        if (signal?.aborted) return stop();
        if (link.isOver()) return reject(new Error('the worker is over'));
        signal?.addEventListener('abort', stop, { once: true });
        open = {
          fail: (problem) => settle(() => reject(problem)),
          hear(told) {
            try {
              const answer = hear(told);
              if (answer !== undefined) settle(() => resolve(answer));
            } catch (problem) {
              settle(() => reject(problem));
            }
          },
        };
        link.watch();
        link.send(message, transfer);
      }),
    end: () => {
      link.end();
      open?.fail(new Error('the worker was ended'));
    },
    isOver: link.isOver,
  };
}
