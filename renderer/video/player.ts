import type { FrameRange } from '#core/timeline/frame-range';
import { type ClipClock, frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';
import { clampFrame, frameCount, type FrameTable } from '#core/timeline/frame-table';
import type { FramePicture, FrameSource } from './frame-source';

/** Shares of true speed the coach can play at. */
export const playPaces = [1 / 8, 1 / 4, 1 / 2, 1] as const;
export type PlayPace = (typeof playPaces)[number];

export interface PlayerOptions {
  readonly source: FrameSource;
  /** Slowdown makes true seconds of the film's own: 240/s stored at 30/s plays eight times faster than stored. */
  readonly slowdown: number;
  /** A frame is to be shown now. */
  readonly onFrame: (picture: FramePicture) => void;
  /** Playing stopped by itself: at the end, or where a frame can't be decoded. */
  readonly onStop: (reason: 'end' | 'lost', frame: number) => void;
}

/**
 * Plays forward by true timestamps. The frame shown is always the one under the clock (last frame with start ≤ t):
 * when decoding falls behind, frames are left out, the film never runs slow. Only asks and answers run here, never
 * decoding, so input is not blocked.
 */
export interface Player {
  play(from: number, pace: PlayPace, loop?: FrameRange): void;
  /** Stops. The frame on screen is the frame returned, whatever the clock had reached. */
  pause(): number;
  setPace(pace: PlayPace): void;
  readonly playing: boolean;
  /** The frame last shown. */
  readonly frame: number;
  close(): void;
}

/** While it plays, a picture at half size is never worth drawing again: the next one is due. */
export const leaveAsItIs = (): void => undefined;

export function createPlayer({ source, slowdown, onFrame, onStop }: PlayerOptions): Player {
  const clock: ClipClock = { table: source.facts.table, slowdown };
  const last = frameCount(clock.table) - 1;
  let shown = 0;
  let pace: PlayPace = 1;
  let loop: FrameRange | null = null;
  let origin: { readonly wall: number; readonly real: number } | null = null;
  let handle: number | null = null;
  /** Counts plays, so that a picture arriving after a pause is not shown. */
  let turn = 0;
  let asking = false;

  const stop = (): void => {
    if (handle !== null) cancelAnimationFrame(handle);
    handle = null;
    turn += 1;
    asking = false;
  };

  const ask = (frame: number): void => {
    const mine = turn;
    asking = true;
    source.show(frame, 1, leaveAsItIs).then(
      (picture) => {
        if (mine !== turn) return;
        asking = false;
        shown = picture.frame;
        onFrame(picture);
      },
      (problem: unknown) => {
        if (mine !== turn) return;
        asking = false;
        // somebody else's newer request: the clock goes on and asks again
        if (wasReplaced(problem)) return;
        stop();
        onStop('lost', frame);
      },
    );
  };

  const tick = (now: number): void => {
    handle = requestAnimationFrame(tick);
    origin ??= { wall: now, real: realTimeOf(clock, shown) };
    let time = origin.real + ((now - origin.wall) / 1000) * pace;
    const end = endOf(clock, loop?.last ?? last);
    if (time >= end) {
      if (!loop) {
        if (shown === last) {
          stop();
          onStop('end', last);
          return;
        }
        time = realTimeOf(clock, last);
      } else {
        time = roundAgain(realTimeOf(clock, loop.first), end, time);
        origin = { wall: now, real: time };
      }
    }
    // at the very end of a stretch the clock's rounding may already name the frame after it
    const frame = Math.min(frameAtRealTime(clock, time), loop?.last ?? last);
    // one picture at a time: a newer request would drop the one being decoded, and nothing would ever show
    if (asking || frame === shown) return;
    ask(frame);
  };

  return {
    play(from, newPace, stretch) {
      stop();
      pace = newPace;
      loop = stretch ? stretchIn(clock.table, stretch) : null;
      shown = loop && (from < loop.first || from > loop.last) ? loop.first : clampFrame(clock.table, from);
      origin = null;
      ask(shown);
      const mine = turn;
      const begin = (now: number): void => {
        if (mine !== turn) return;
        // the clock starts when the first picture is there
        if (asking) handle = requestAnimationFrame(begin);
        else tick(now);
      };
      handle = requestAnimationFrame(begin);
    },
    pause() {
      stop();
      return shown;
    },
    setPace(newPace) {
      // the clock goes on from the picture on screen, so a change of pace never jumps
      origin = null;
      pace = newPace;
    },
    get playing() {
      return handle !== null;
    },
    get frame() {
      return shown;
    },
    close: stop,
  };
}

/** When a frame ends, true seconds. */
function endOf(clock: ClipClock, frame: number): number {
  const { table, slowdown } = clock;
  return frame >= frameCount(table) - 1
    ? (table.endTick - (table.starts[0] as number)) / table.ticksPerSecond / slowdown
    : realTimeOf(clock, frame + 1);
}

const wasReplaced = (problem: unknown): boolean =>
  problem instanceof DOMException && problem.name === 'AbortError';

/** A time past the end of a stretch, as a time inside it. */
const roundAgain = (start: number, end: number, time: number): number =>
  start + ((time - start) % Math.max(1e-3, end - start));

const stretchIn = (table: FrameTable, { first, last }: FrameRange): FrameRange => ({
  first: clampFrame(table, first),
  last: clampFrame(table, last),
});
