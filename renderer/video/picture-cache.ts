import type { FrameRange } from '#core/timeline/frame-range';
import type { HeldPicture } from './held-picture';

/** Decoded pictures by frame number, never more bytes than the budget. */
export interface PictureCache {
  get(frame: number): HeldPicture | undefined;
  has(frame: number): boolean;
  /** Whether the frame is held at its full resolution. */
  hasWhole(frame: number): boolean;
  /**
   * Takes a picture in and makes room: first those outside `range` go, then those outside `whole` are halved where they can
   * be, then others go; always the farthest from the playhead first.
   */
  put(picture: HeldPicture, playhead: number, range: FrameRange, whole?: FrameRange): void;
  /** Makes room where the budget has become smaller. */
  shrink(playhead: number, range: FrameRange, whole: FrameRange): void;
  readonly bytes: number;
  readonly count: number;
  clear(): void;
}

const isIn = (frame: number, { first, last }: FrameRange): boolean => frame >= first && frame <= last;

export function createPictureCache(budgetBytes: () => number): PictureCache {
  const held = new Map<number, HeldPicture>();
  let bytes = 0;

  const drop = (picture: HeldPicture): void => {
    held.delete(picture.frame);
    bytes -= picture.bytes;
    picture.release();
  };

  const take = (picture: HeldPicture): void => {
    held.set(picture.frame, picture);
    bytes += picture.bytes;
  };

  /** Gives up some bytes; false when only the playhead's picture is left, which always stays. */
  const makeRoom = (playhead: number, range: FrameRange, whole: FrameRange): boolean => {
    let worst: HeldPicture | undefined;
    let worstRank = 0;
    for (const picture of held.values()) {
      if (picture.frame === playhead) continue;
      const rank =
        Math.abs(picture.frame - playhead) +
        (isIn(picture.frame, range) ? (picture.whole && !isIn(picture.frame, whole) ? 1e9 : 0) : 2e9);
      if (rank > worstRank) {
        worst = picture;
        worstRank = rank;
      }
    }
    if (!worst) return false;
    const half = worstRank > 1e9 && worstRank < 2e9 ? worst.halved() : null;
    drop(worst);
    if (half) take(half);
    return true;
  };

  const shrink: PictureCache['shrink'] = (playhead, range, whole) => {
    while (bytes > budgetBytes()) {
      if (!makeRoom(playhead, range, whole)) return;
    }
  };

  return {
    get: (frame) => held.get(frame),
    has: (frame) => held.has(frame),
    hasWhole: (frame) => held.get(frame)?.whole === true,
    put(picture, playhead, range, whole = range) {
      const before = held.get(picture.frame);
      if (before?.whole && !picture.whole) {
        picture.release();
        return;
      }
      if (before) drop(before);
      take(picture);
      shrink(playhead, range, whole);
    },
    shrink,
    get bytes() {
      return bytes;
    },
    get count() {
      return held.size;
    },
    clear() {
      for (const picture of [...held.values()]) drop(picture);
    },
  };
}
