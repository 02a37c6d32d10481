import { usualBytes, type HeldPicture, lightShare } from './held-picture';
import type { OpenedFilm } from './opened-film';
import { createPictureCache, type PictureCache } from './picture-cache';

/** Copies on their way out of the decoder at one time. */
const copiesAtOnce = 4;
/** After a jump, pictures passed on the way are copied once the one waited for is there: at most so many, or this share of all. */
const mostPassed = 8;
const passedShare = 1 / 16;

/** The pictures of one film that are held or being copied, those that are lost, and the bytes they may take. */
export interface Holdings {
  readonly cache: PictureCache;
  readonly copying: Set<number>;
  readonly lost: Set<number>;
  /** How many decoder's pictures may wait to be copied after a jump. */
  readonly passedAtMost: number;
  canCopy(): boolean;
  /** Whole pictures that fit, and how many of half size fit in the room of one. */
  capacity(): number;
  halvesToWhole(): number;
  /** What pictures of this film really take. */
  learnFrom(picture: HeldPicture): void;
  /** `waiting`: decoder's pictures that wait to be copied. */
  memory(waiting: number): {
    readonly heldBytes: number;
    readonly budgetBytes: number;
    readonly pictures: number;
  };
  limitTo(bytes: number): void;
}

export function createHoldings(
  { facts }: OpenedFilm,
  { canHalve, budgetBytes }: { readonly canHalve: boolean; readonly budgetBytes: number },
): Holdings {
  let budget = budgetBytes;
  let pictureBytes = usualBytes(facts.width, facts.height);
  let halvesToWhole = canHalve ? 4 : 1;
  const passedAtMost = Math.min(mostPassed, Math.floor((budgetBytes / pictureBytes) * passedShare));
  const spare = copiesAtOnce + passedAtMost;
  const cache = createPictureCache(() => Math.max(budget / 2, budget - spare * pictureBytes));
  const copying = new Set<number>();
  return {
    cache,
    copying,
    lost: new Set(),
    passedAtMost,
    canCopy: () => copying.size < copiesAtOnce,
    capacity: () => Math.max(3, Math.floor(budget / pictureBytes) - spare),
    halvesToWhole: () => halvesToWhole,
    learnFrom(picture) {
      if (!picture.whole) return;
      pictureBytes = picture.bytes;
      halvesToWhole = picture.canHalve ? (picture.light ? 4 * lightShare : 4) : 1;
    },
    memory: (waiting) => ({
      heldBytes: cache.bytes + (copying.size + waiting) * pictureBytes,
      budgetBytes: budget,
      pictures: cache.count,
    }),
    limitTo(bytes) {
      budget = bytes;
    },
  };
}
