import type { FoundPiece, FromFollower, ToFollower } from './follow-message';
import type { PieceTask } from './piece';

/** Follows pieces one after the other, away from the window's own thread. */
export interface Follower {
  /** Rejects with an AbortError when cancelled, with an Error when the worker failed twice at it. */
  follow(task: PieceTask, onSteps: (steps: number) => void, signal: AbortSignal): Promise<FoundPiece>;
  close(): void;
}

/** The part of a Worker that is used; tests hand in one that dies. */
export interface FollowerWorker {
  onmessage: ((event: MessageEvent<FromFollower>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToFollower): void;
  terminate(): void;
}

/** How often a piece is tried before its failure is told. */
const tries = 2;
/** A worker that says nothing for this long is taken for dead, ms: a step takes far less than a second, loading a few. */
const silenceMs = 60_000;

const saidNothing = 'the worker gave no sign of life';

/**
 * A follower whose worker is made when first needed. A worker that dies is replaced and the piece followed again,
 * once. Cancelling ends the worker at once: what it had begun is of no use, and loading it again takes a second.
 */
export function createFollower(
  makeWorker: () => FollowerWorker,
  opencv: string,
  { silence = silenceMs }: { readonly silence?: number } = {},
): Follower {
  let worker: Promise<FollowerWorker> | null = null;
  let running: FollowerWorker | null = null;
  let ids = 0;

  const end = (): void => {
    running?.terminate();
    running = null;
    worker = null;
  };

  const opened = (): Promise<FollowerWorker> => {
    worker ??= new Promise((resolve, reject) => {
      const made = makeWorker();
      running = made;
      const silent = setTimeout(() => reject(new Error(saidNothing)), silence);
      made.onmessage = ({ data }) => {
        clearTimeout(silent);
        if (data.kind === 'opened') resolve(made);
        else if (data.kind === 'failed') reject(new Error(data.reason));
      };
      made.onerror = (event) => reject(new Error(event.message || 'the worker could not start'));
      made.postMessage({ kind: 'open', opencv });
    });
    return worker;
  };

  const once = async (
    task: PieceTask,
    onSteps: (steps: number) => void,
    signal: AbortSignal,
  ): Promise<FoundPiece> => {
    const own = await opened();
    signal.throwIfAborted();
    ids += 1;
    const id = ids;
    return new Promise((resolve, reject) => {
      const stop = (): void => {
        clearTimeout(silent);
        end();
        reject(new DOMException('Following was cancelled', 'AbortError'));
      };
      const settle = (done: () => void): void => {
        signal.removeEventListener('abort', stop);
        clearTimeout(silent);
        own.onmessage = null;
        own.onerror = null;
        done();
      };
      const giveUp = (): void => settle(() => reject(new Error(saidNothing)));
      let silent = setTimeout(giveUp, silence);
      signal.addEventListener('abort', stop, { once: true });
      own.onmessage = ({ data }) => {
        clearTimeout(silent);
        silent = setTimeout(giveUp, silence);
        if (data.kind === 'step' && data.id === id) onSteps(data.steps);
        else if (data.kind === 'done' && data.id === id) settle(() => resolve(data.found));
        else if (data.kind === 'failed') settle(() => reject(new Error(data.reason)));
      };
      own.onerror = (event) => settle(() => reject(new Error(event.message || 'the worker died')));
      own.postMessage({ kind: 'follow', id, task });
    });
  };

  return {
    async follow(task, onSteps, signal) {
      for (let attempt = 1; ; attempt++) {
        try {
          return await once(task, onSteps, signal);
        } catch (problem) {
          end();
          if (signal.aborted || attempt >= tries) throw problem;
        }
      }
    },
    close: end,
  };
}
