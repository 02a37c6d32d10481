import type { PairMode, PairSide } from '#core/compare/pair-clock';
import { type PairRun, pairRun } from '#core/compare/pair-run';
import type { FrameSource } from '../video/frame-source';
import { leaveAsItIs } from '../video/player';

export interface PairPlayerOptions {
  readonly sides: readonly PairSide[];
  readonly mode: PairMode;
  /** Where each swim stands, and which of them the others follow. */
  readonly standing: { readonly frames: readonly number[]; readonly lead: number };
  /** A swim without pictures runs along by its frame numbers. */
  readonly sources: readonly (FrameSource | null)[];
  readonly pace: number;
  /** All pictures of a moment are there: they are to be shown at once. */
  readonly onFrames: (frames: readonly number[]) => void;
  readonly onStop: (reason: 'end' | 'lost') => void;
}

export interface PairPlayer {
  setPace(pace: number): void;
  close(): void;
}

const isAbort = (problem: unknown): boolean =>
  problem instanceof DOMException && problem.name === 'AbortError';

/**
 * Plays swims together by true timestamps. Every moment is worked out from the start of the run, and the pictures of a
 * moment change together: when decoding falls behind, moments are left out in both, so neither runs ahead of the other.
 */
export function createPairPlayer(options: PairPlayerOptions): PairPlayer {
  const { sides, mode, sources, onFrames, onStop } = options;
  const run: PairRun = pairRun(sides, mode, options.standing);
  let pace = options.pace;
  let origin: { readonly wall: number; readonly seconds: number } | null = null;
  let reached = 0;
  let shown: readonly number[] | null = null;
  let asking = false;
  let closed = false;
  let handle = 0;

  const stop = (): void => {
    closed = true;
    cancelAnimationFrame(handle);
  };

  const ask = async (frames: readonly number[]): Promise<void> => {
    asking = true;
    try {
      await Promise.all(frames.map((frame, index) => sources[index]?.show(frame, 1, leaveAsItIs)));
      if (closed) return;
      shown = frames;
      onFrames(frames);
    } catch (problem) {
      // somebody else's newer request: the clock goes on and asks again
      if (closed || isAbort(problem)) return;
      stop();
      onStop('lost');
    } finally {
      asking = false;
    }
  };

  const tick = (now: number): void => {
    handle = requestAnimationFrame(tick);
    // the clock starts when the first pictures are there
    if (shown === null) {
      if (!asking) void ask(run.framesAt(0));
      return;
    }
    origin ??= { wall: now, seconds: reached };
    reached = origin.seconds + ((now - origin.wall) / 1000) * pace;
    const frames = run.framesAt(Math.min(reached, run.seconds));
    if (frames.every((frame, index) => frame === shown?.[index])) {
      if (reached < run.seconds || asking) return;
      stop();
      onStop('end');
      return;
    }
    if (!asking) void ask(frames);
  };
  handle = requestAnimationFrame(tick);

  return {
    setPace(next) {
      // the clock goes on from where it is, so a change of pace never jumps
      origin = null;
      pace = next;
    },
    close: stop,
  };
}
