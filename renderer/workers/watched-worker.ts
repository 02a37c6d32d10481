/** The part of a Worker that is used; tests hand in one that dies, or never answers. */
export interface PlainWorker<To, From> {
  onmessage: ((event: MessageEvent<From>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror?: ((event: MessageEvent) => void) | null;
  postMessage(message: To, transfer: Transferable[]): void;
  terminate(): void;
}

/**
 * How long a worker that owes something may keep the window waiting. Checks are counted, not time: after the machine has
 * slept every worker looks late.
 */
export interface WorkerPatience {
  readonly checkMs: number;
  /** Checks without any sign of life: it goes round in a circle, or is gone. */
  readonly silentChecks: number;
  /** Checks until the first sign of life, while its program is being loaded; as many as later unless given. */
  readonly startChecks?: number;
}

/** Why a worker is over: it could not start or failed, said nothing for too long, or was ended from outside. */
export type WorkerOver = 'broken' | 'silent' | 'ended';

export interface WorkerListener<From> {
  /** Each message; it counts as a sign of life. */
  heard(message: From): void;
  /** Once, when the worker was given up; it has been terminated. Not called for `end()`. `words`: what it said of it. */
  lost(why: Exclude<WorkerOver, 'ended'>, words: string): void;
  /** At each check of a worker that is still trusted. */
  checked?(): void;
}

/** One worker, watched while it owes something. */
export interface WatchedWorker<To> {
  /** Nothing is sent to a worker that is over. */
  send(message: To, transfer?: Transferable[]): void;
  /** From now on it owes a sign of life. */
  watch(): void;
  /** It owes nothing any more. */
  rest(): void;
  end(): void;
  isOver(): boolean;
}

export const saidNothing = 'the worker gave no sign of life';

/** Every worker of the window is spoken to through this; what it is asked and what a loss means is its owner's. */
export function watchedWorker<To, From>(
  worker: PlainWorker<To, From>,
  patience: WorkerPatience,
  { heard, lost, checked }: WorkerListener<From>,
): WatchedWorker<To> {
  const { checkMs, silentChecks, startChecks = silentChecks } = patience;
  let over = false;
  let isAlive = false;
  let silent = 0;
  let watching: ReturnType<typeof setInterval> | null = null;

  const rest = (): void => {
    if (watching !== null) clearInterval(watching);
    watching = null;
  };
  const end = (): void => {
    if (over) return;
    over = true;
    rest();
    worker.terminate();
  };
  const lose = (why: Exclude<WorkerOver, 'ended'>, words: string): void => {
    if (over) return;
    end();
    lost(why, words);
  };
  const check = (): void => {
    silent += 1;
    // one whose program never came is broken, not slow
    if (silent >= (isAlive ? silentChecks : startChecks)) lose(isAlive ? 'silent' : 'broken', saidNothing);
    else checked?.();
  };

  worker.onmessage = ({ data }) => {
    isAlive = true;
    silent = 0;
    heard(data);
  };
  worker.onerror = (event) => lose('broken', event.message || 'the worker died');
  worker.onmessageerror = () => lose('broken', 'the worker’s message could not be read');

  return {
    send(message, transfer = []) {
      if (!over) worker.postMessage(message, transfer);
    },
    watch() {
      if (over || watching !== null) return;
      silent = 0;
      watching = setInterval(check, checkMs);
    },
    rest,
    end,
    isOver: () => over,
  };
}
