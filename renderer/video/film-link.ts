import { type PlainWorker, type WorkerPatience, watchedWorker } from '../workers/watched-worker';
import type { FilmAnswer, FilmAsk, FromFilmWorker, ToFilmWorker } from './film-message';

export type FilmWorker = PlainWorker<ToFilmWorker, FromFilmWorker>;

/** How long a worker may keep the window waiting. */
export interface FilmPatience extends WorkerPatience {
  /** Checks with signs of life in which nothing new of the file was seen. */
  readonly standingChecks: number;
}

/** Four seconds without a sign of life; twenty on the same ground, as a sleeping disk takes ten to wake; a minute to load. */
export const filmPatience: FilmPatience = {
  checkMs: 250,
  silentChecks: 17,
  standingChecks: 80,
  startChecks: 241,
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
  let alive = false;
  let ground = -1;
  let standing = 0;

  const lost = (why: FilmWorkerEnded['why']): void => {
    for (const { reject } of waiting.values()) reject(new FilmWorkerEnded(why));
    waiting.clear();
  };
  const end = (why: FilmWorkerEnded['why'] = 'ended'): void => {
    link.end();
    lost(why);
  };
  const settle = (id: number, how: (open: Open) => void): void => {
    const open = waiting.get(id);
    waiting.delete(id);
    standing = 0;
    if (waiting.size === 0) link.rest();
    if (open) how(open);
  };
  const link = watchedWorker(worker, patience, {
    lost,
    heard(message) {
      alive = true;
      if (message.kind === 'beat') {
        if (message.ground !== ground) standing = 0;
        ground = message.ground;
      } else if (message.kind === 'answer') settle(message.id, ({ resolve }) => resolve(message.answer));
      else settle(message.id, ({ reject }) => reject(new Error(message.reason)));
    },
    checked() {
      standing += 1;
      if (alive && standing > patience.standingChecks) end('standing');
    },
  });

  return {
    ask(ask) {
      if (link.isOver()) return Promise.reject(new FilmWorkerEnded('ended'));
      ids += 1;
      const id = ids;
      if (waiting.size === 0) {
        standing = 0;
        link.watch();
      }
      return new Promise((resolve, reject) => {
        waiting.set(id, { resolve, reject });
        link.send({ id, ask });
      });
    },
    end,
    isOver: link.isOver,
    isBusy: () => waiting.size > 0,
  };
}
