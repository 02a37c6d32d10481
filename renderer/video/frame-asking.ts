import type { FramePicture } from './frame-source';
import {
  afterLookingEvent,
  awaitedFrame,
  hasStopped,
  justOpened,
  type Looking,
  type LookingEvent,
} from './looking-machine';
import type { HeldPicture } from './held-picture';
import type { Walk } from './decoding-plan';

/** Nothing asked for this long: the coach has stopped, and full resolution is worth a run. Ten steps a second don't stop. */
const stopMs = 250;

const aborted = (why: string): DOMException => new DOMException(why, 'AbortError');

interface Open {
  resolve(picture: FramePicture): void;
  reject(reason: unknown): void;
}

/** Who waits for which frame. What is known of it is a state of looking-machine.ts; here are the promises and the clock. */
export interface FrameAsking {
  looking(): Looking;
  advance(event: LookingEvent): void;
  /**
   * A frame is asked for: who waited for another is told so. `here` is a picture that can be given at once. With `onWhole`,
   * a picture at half size will do; it gets the whole one later.
   */
  ask(
    walk: Walk,
    here: FramePicture | null,
    onWhole?: (picture: FramePicture) => void,
  ): Promise<FramePicture>;
  /** Gives a frame, or tells that it is lost, where it is the one waited for; false where it is not. */
  give(frame: number, picture: FramePicture): boolean;
  fail(frame: number, reason: Error): boolean;
  /** Gives the whole picture of the frame on the screen, where it is still owed. */
  giveWhole(picture: HeldPicture | undefined): void;
  close(): void;
}

/** `stopped` is called when nothing has been asked for a while. */
export function createFrameAsking(stopped: () => void): FrameAsking {
  let looking = justOpened;
  let open: Open | null = null;
  let wholeOwed: ((picture: FramePicture) => void) | null = null;
  let stopping: ReturnType<typeof setTimeout> | undefined;

  const advance = (event: LookingEvent): void => {
    looking = afterLookingEvent(looking, event);
  };
  const drop = (why: string): void => {
    clearTimeout(stopping);
    open?.reject(aborted(why));
    open = null;
    wholeOwed = null;
  };
  const answer = (frame: number, how: (answered: Open | null) => void): boolean => {
    if (awaitedFrame(looking) !== frame) return false;
    const answered = open;
    open = null;
    advance({ kind: 'answered' });
    how(answered);
    return true;
  };

  return {
    looking: () => looking,
    advance,
    ask(walk, here, onWhole) {
      drop('A newer frame was asked for');
      if (looking.kind === 'closed') return Promise.reject(aborted('The clip is closed'));
      advance({ kind: 'asked', walk, half: onWhole !== undefined, isHere: here !== null });
      stopping = setTimeout(() => {
        advance({ kind: 'stopped' });
        stopped();
      }, stopMs);
      if (onWhole && !here?.whole) wholeOwed = onWhole;
      if (here) return Promise.resolve(here);
      return new Promise((resolve, reject) => {
        open = { resolve, reject };
      });
    },
    give: (frame, picture) =>
      answer(frame, (answered) => {
        if (picture.whole) wholeOwed = null;
        answered?.resolve(picture);
      }),
    fail: (frame, reason) => answer(frame, (answered) => answered?.reject(reason)),
    giveWhole(picture) {
      if (!wholeOwed || awaitedFrame(looking) !== null || !picture?.whole) return;
      // one that takes long to draw waits until the coach has stopped
      if (picture.light && !hasStopped(looking)) return;
      const tell = wholeOwed;
      wholeOwed = null;
      tell(picture);
    },
    close() {
      drop('The clip is closed');
      advance({ kind: 'closed' });
    },
  };
}
