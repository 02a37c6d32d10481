import type { HeldPicture } from './held-picture';

/** Which frames are worth holding around the playhead, both ends included. */
export interface HoldingRange {
  readonly first: number;
  readonly last: number;
}

/** Decoded pictures by frame number, never more bytes than the budget. */
export interface PictureCache {
  get(frame: number): HeldPicture | undefined;
  has(frame: number): boolean;
  /** Takes a picture in and lets others go, the farthest from the playhead first. */
  put(picture: HeldPicture, playhead: number, range: HoldingRange): void;
  readonly bytes: number;
  readonly count: number;
  clear(): void;
}

export function createPictureCache(budgetBytes: number): PictureCache {
  const held = new Map<number, HeldPicture>();
  let bytes = 0;

  const drop = (picture: HeldPicture): void => {
    held.delete(picture.frame);
    bytes -= picture.bytes;
    picture.release();
  };

  /** What goes first: outside the range before inside it, then the farthest. The playhead's picture always stays. */
  const leastWanted = (playhead: number, range: HoldingRange): HeldPicture | undefined => {
    let worst: HeldPicture | undefined;
    let worstRank = 0;
    for (const picture of held.values()) {
      if (picture.frame === playhead) continue;
      const outside = picture.frame < range.first || picture.frame > range.last;
      const rank = Math.abs(picture.frame - playhead) + (outside ? 1e9 : 0);
      if (rank > worstRank) {
        worst = picture;
        worstRank = rank;
      }
    }
    return worst;
  };

  return {
    get: (frame) => held.get(frame),
    has: (frame) => held.has(frame),
    put(picture, playhead, range) {
      const before = held.get(picture.frame);
      if (before) drop(before);
      held.set(picture.frame, picture);
      bytes += picture.bytes;
      while (bytes > budgetBytes) {
        const worst = leastWanted(playhead, range);
        if (!worst) return;
        drop(worst);
      }
    },
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
