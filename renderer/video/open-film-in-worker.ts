import { failure, type Result, success } from '#core/host-contract/host-error';
import { createFilmLink, type FilmLink, FilmWorkerEnded, type FilmWorker, filmPatience } from './film-link';
import type { FilmAnswer, FilmAsk, FilmTold } from './film-message';
import type { ClipInput } from './frame-source';
import type { OpenedFilm, OpenFilm } from './opened-film';
import type { FilmPacket } from './packet-index';

/** Pictures handed over at once: what a decoder holds in its queue. */
const batch = 6;
/** How often in a row a worker is made anew for a film that was open, before its death is told. */
const revivals = 2;

/**
 * Opens films in workers of their own, so that no file can hold up the window: a worker that goes silent or stands still is
 * ended, and the film refused with `unreadable-index`. Later, when pictures are read, a worker that dies is made anew. One
 * that closed its film is kept for the next.
 */
export function createFilmOpener(makeWorker: () => FilmWorker, patience = filmPatience): OpenFilm {
  let spare: FilmLink | null = null;
  const begin = (): FilmLink => {
    const kept = spare;
    spare = null;
    return kept && !kept.isOver() ? kept : createFilmLink(makeWorker(), patience);
  };
  const giveBack = (link: FilmLink): void => {
    if (link.isOver() || link.isBusy() || spare) {
      link.end();
      return;
    }
    spare = link;
    // one that can't even close its film is of no use to the next
    link.ask({ kind: 'close' }).catch(() => link.end());
  };

  const open = async (link: FilmLink, clip: ClipInput): Promise<Result<FilmTold>> => {
    try {
      const answer = await link.ask({ kind: 'open', clip });
      if (answer.kind === 'opened') return answer.film;
      throw new Error(`an answer to another question: ${answer.kind}`);
    } catch (problem) {
      link.end();
      if (!(problem instanceof FilmWorkerEnded)) throw problem;
      if (problem.why === 'ended') return failure('cancelled');
      return failure(problem.why === 'broken' ? 'host-unreachable' : 'unreadable-index', {
        reason: problem.message,
      });
    }
  };

  return async (given, signal) => {
    if (signal.aborted) return failure('cancelled');
    const clip =
      'address' in given ? { ...given, address: new URL(given.address, location.href).href } : given;
    let link = begin();
    const stop = (): void => link.end();
    signal.addEventListener('abort', stop, { once: true });
    const first = await open(link, clip).finally(() => signal.removeEventListener('abort', stop));
    if (!first.ok) {
      giveBack(link);
      return first;
    }
    if (signal.aborted) {
      link.end();
      return failure('cancelled');
    }

    let closed = false;
    let deaths = 0;
    let reviving: Promise<void> | null = null;
    /** A new worker on the same film; what was in hand elsewhere begins again there. */
    const revive = async (): Promise<void> => {
      deaths += 1;
      link = begin();
      const again = await open(link, clip);
      if (!again.ok) throw new Error(`the film can't be read any more: ${again.error.code}`);
    };
    const ask = async (question: FilmAsk): Promise<FilmAnswer> => {
      for (;;) {
        if (closed) throw new DOMException('The clip is closed', 'AbortError');
        try {
          if (link.isOver()) {
            reviving ??= revive().finally(() => {
              reviving = null;
            });
            await reviving;
          }
          const answer = await link.ask(question);
          deaths = 0;
          return answer;
        } catch (problem) {
          if (!(problem instanceof FilmWorkerEnded) || deaths >= revivals) {
            deaths = 0;
            throw problem;
          }
        }
      }
    };
    return success(
      filmOf(first.value, {
        ask,
        // a worker that is over has dropped everything; one that ends over it is noticed by the next question
        drop: (stream) => {
          if (!closed && !link.isOver()) link.ask({ kind: 'drop', stream }).catch(() => undefined);
        },
        close: () => {
          closed = true;
          giveBack(link);
        },
      }),
    );
  };
}

interface Asking {
  ask(question: FilmAsk): Promise<FilmAnswer>;
  drop(stream: number): void;
  close(): void;
}

function filmOf(told: FilmTold, { ask, drop, close }: Asking): OpenedFilm {
  const { facts, order, lost, decoding, flip, timesInDecodingOrder, ticks, durations, keys } = told;
  const pictures = ticks.map((tick, coded) => ({
    tick,
    durationTicks: durations[coded] as number,
    key: keys[coded] ?? false,
  }));
  let streams = 0;

  const packets = async (question: FilmAsk): Promise<Extract<FilmAnswer, { kind: 'packets' }>> => {
    const answer = await ask(question);
    if (answer.kind !== 'packets') throw new Error(`an answer to another question: ${answer.kind}`);
    return answer;
  };
  async function* readFrom(coded: number): AsyncGenerator<FilmPacket, void, unknown> {
    streams += 1;
    const stream = streams;
    let from = coded;
    const next = () => packets({ kind: 'packets', stream, from, count: batch });
    let coming = next();
    try {
      for (;;) {
        const { packets: come, ended } = await coming;
        from += come.length;
        if (!ended) {
          coming = next();
          // when nobody takes it any more, its failing is nobody's
          coming.catch(() => undefined);
        }
        yield* come;
        if (ended) return;
      }
    } finally {
      drop(stream);
    }
  }
  return {
    ...{ facts, decoding, flip, timesInDecodingOrder, close },
    index: {
      ...{ order, pictures, lost, readFrom },
      read: async (coded) => (await packets({ kind: 'packet', coded })).packets[0] ?? null,
    },
  };
}

/** Opens films in the running app. */
export const openFilmInWorker = createFilmOpener(
  () => new Worker(new URL('./film-worker.ts', import.meta.url), { type: 'module' }),
);
