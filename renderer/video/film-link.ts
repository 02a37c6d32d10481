import type { FilmAnswer, FilmAsk, FromFilmWorker, ToFilmWorker } from './film-message';

/** The part of a Worker that is used; tests hand in one that dies, or never answers. */
export interface FilmWorker {
  onmessage: ((event: MessageEvent<FromFilmWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToFilmWorker): void;
  terminate(): void;
}

/** How long a worker may keep the window waiting, in checks of `checkMs`. */
export interface FilmPatience {
  readonly checkMs: number;
  /** Checks without any sign of life: it goes round in a circle, or is gone. */
  readonly silentChecks: number;
  /** Checks with signs of life in which nothing new of the file was seen. */
  readonly standingChecks: number;
  /** Checks until the first sign of life: its program is being loaded. */
  readonly startChecks: number;
}

/**
 * Four seconds without a sign of life; twenty on the same ground, as a sleeping disk takes ten to wake; a minute to load.
 * Checks are counted, not time: after the machine has slept, all workers look late.
 */
export const filmPatience: FilmPatience = {
  checkMs: 250,
  silentChecks: 16,
  standingChecks: 80,
  startChecks: 240,
};

/** Why a worker was given up. */
export class FilmWorkerEnded extends Error {
  constructor(readonly why: 'silent' | 'standing' | 'broken' | 'ended') {
    super(`the film's reader ended: ${why}`);
    this.name = 'FilmWorkerEnded';
  }
}

/** One worker and what was asked of it. Anything still unanswered when it ends rejects with FilmWorkerEnded. */
export interface FilmLink {
  ask(ask: FilmAsk): Promise<FilmAnswer>;
  end(why?: FilmWorkerEnded['why']): void;
  isOver(): boolean;
  isBusy(): boolean;
}

interface Open {
  resolve(answer: FilmAnswer): void;
  reject(reason: Error): void;
}

export function createFilmLink(worker: FilmWorker, patience: FilmPatience): FilmLink {
  const waiting = new Map<number, Open>();
  let ids = 0;
  let over = false;
  let alive = false;
  let ground = -1;
  let silent = 0;
  let standing = 0;
  let watch: ReturnType<typeof setInterval> | null = null;

  const end = (why: FilmWorkerEnded['why'] = 'ended'): void => {
    if (over) return;
    over = true;
    unwatch();
    worker.terminate();
    for (const { reject } of waiting.values()) reject(new FilmWorkerEnded(why));
    waiting.clear();
  };
  const unwatch = (): void => {
    if (watch !== null) clearInterval(watch);
    watch = null;
  };
  const check = (): void => {
    silent += 1;
    standing += 1;
    if (silent > (alive ? patience.silentChecks : patience.startChecks)) end(alive ? 'silent' : 'broken');
    else if (alive && standing > patience.standingChecks) end('standing');
  };
  const settle = (id: number, how: (open: Open) => void): void => {
    const open = waiting.get(id);
    waiting.delete(id);
    standing = 0;
    if (waiting.size === 0) unwatch();
    if (open) how(open);
  };

  worker.onmessage = ({ data }) => {
    alive = true;
    silent = 0;
    if (data.kind === 'beat') {
      if (data.ground !== ground) standing = 0;
      ground = data.ground;
    } else if (data.kind === 'answer') settle(data.id, ({ resolve }) => resolve(data.answer));
    else settle(data.id, ({ reject }) => reject(new Error(data.reason)));
  };
  worker.onerror = () => end('broken');

  return {
    ask(ask) {
      if (over) return Promise.reject(new FilmWorkerEnded('ended'));
      ids += 1;
      const id = ids;
      if (waiting.size === 0) {
        silent = 0;
        standing = 0;
        watch = setInterval(check, patience.checkMs);
      }
      return new Promise((resolve, reject) => {
        waiting.set(id, { resolve, reject });
        worker.postMessage({ id, ask });
      });
    },
    end,
    isOver: () => over,
    isBusy: () => waiting.size > 0,
  };
}
