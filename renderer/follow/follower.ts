import { type AskedWorker, askedWorker } from '../workers/ask-worker';
import type { PlainWorker, WorkerPatience } from '../workers/watched-worker';
import type { FoundPiece, FromFollower, ToFollower } from './follow-message';
import type { PieceTask } from '../../shared-core/follow/piece';
import { followWords } from '#core/words/follow';

/** Follows pieces one after the other, away from the window's own thread. */
export interface Follower {
  /** Rejects with an AbortError when cancelled, with an Error when the worker failed twice at it. */
  follow(task: PieceTask, onSteps: (steps: number) => void, signal: AbortSignal): Promise<FoundPiece>;
  close(): void;
}

export type FollowerWorker = PlainWorker<ToFollower, FromFollower>;

/** How often a piece is tried before its failure is told. */
const tries = 2;
/** A minute without a word: a step takes far less than a second, loading a few. */
const followerPatience: WorkerPatience = { checkMs: 250, silentChecks: 240 };
const stopped = followWords('followingCancelled');

/**
 * A follower whose worker is made when first needed. A worker that dies is replaced and the piece followed again,
 * once. Cancelling ends the worker at once: what it had begun is of no use, and loading it again takes a second.
 */
export function createFollower(
  makeWorker: () => FollowerWorker,
  opencv: string,
  patience = followerPatience,
): Follower {
  let worker: AskedWorker<ToFollower, FromFollower> | null = null;
  let opening: Promise<unknown> | null = null;
  let ids = 0;

  const end = (): void => {
    worker?.end();
    worker = null;
    opening = null;
  };

  const once = async (
    task: PieceTask,
    onSteps: (steps: number) => void,
    signal: AbortSignal,
  ): Promise<FoundPiece> => {
    if (worker?.isOver()) end();
    worker ??= askedWorker(makeWorker(), patience);
    const own = worker;
    opening ??= own.ask({
      message: { kind: 'open', opencv },
      stopped,
      hear: (told) => orFail(told).kind === 'opened' || undefined,
    });
    await opening;
    signal.throwIfAborted();
    ids += 1;
    const id = ids;
    return own.ask(
      {
        message: { kind: 'follow', id, task },
        stopped,
        hear(message) {
          const told = orFail(message);
          if (told.kind === 'step' && told.id === id) onSteps(told.steps);
          return told.kind === 'done' && told.id === id ? told.found : undefined;
        },
      },
      signal,
    );
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

function orFail(told: FromFollower): Exclude<FromFollower, { readonly kind: 'failed' }> {
  if (told.kind === 'failed') throw new Error(told.reason);
  return told;
}
