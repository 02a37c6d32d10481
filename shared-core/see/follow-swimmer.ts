import type { BodySighting } from './body-sighting';
import type { SeenPicture } from './cut-square';
import type { Detection } from './detect-output';
import { findSwimmers, type PoseNetworks, seeBody } from './find-swimmers';
import { type Square, squaresMeet } from './square';

/** What came of one picture. */
type Look =
  | { readonly kind: 'seen'; readonly body: BodySighting; readonly square: Square }
  | { readonly kind: 'lost' }
  /** More than one swimmer, and nobody has said which: nothing was followed. */
  | { readonly kind: 'several'; readonly found: readonly Detection[] };

/** Keeps to one swimmer from picture to picture. Pictures come in the order of time. */
export interface SwimmerFollower {
  look(picture: SeenPicture, time: number): Promise<Look>;
}

/** Who is lost is looked for so often, real seconds: looking over a whole picture takes as long as twenty pictures. Our choice. */
const lookAgainSeconds = 0.2;
/** From picture to picture a body stays where it was, give or take this share of its square; else it is another one. */
const stays = 0.5;
/** Who was found again within this time is the one of before only where they were, in square sides. */
const near = 0.4;
const forgetSeconds = 2;

/**
 * @param chosen where the coach said the swimmer is; null: nobody was asked, and several are then told
 */
export function followSwimmer(networks: PoseNetworks, chosen: Square | null): SwimmerFollower {
  let square: Square | null = null;
  let wanted: { readonly square: Square; readonly time: number } | null = null;
  let lookedAt = Number.NEGATIVE_INFINITY;

  async function seenIn(picture: SeenPicture, at: Square, time: number): Promise<Look | null> {
    const seen = await seeBody(networks, picture, at);
    if (!seen || squaresMeet(at, seen.next) < stays) return null;
    square = seen.next;
    wanted = { square, time };
    return { kind: 'seen', body: seen.body, square: at };
  }

  /** Who of those found is meant; null: can't be told. */
  function pick(found: readonly Detection[], time: number): Detection | null {
    const meant = wanted && time - wanted.time < forgetSeconds ? wanted.square : wanted ? null : chosen;
    if (!meant) return found.length === 1 || wanted || chosen ? (found[0] ?? null) : null;
    const apart = (each: Detection): number =>
      Math.hypot(each.square.x - meant.x, each.square.y - meant.y) / meant.side;
    const nearest = [...found].sort((a, b) => apart(a) - apart(b))[0];
    return nearest && (apart(nearest) < near || !wanted) ? nearest : null;
  }

  return {
    async look(picture, time) {
      if (square) {
        const seen = await seenIn(picture, square, time);
        if (seen) return seen;
        square = null;
        lookedAt = Number.NEGATIVE_INFINITY;
      }
      if (time - lookedAt < lookAgainSeconds) return { kind: 'lost' };
      lookedAt = time;
      const found = await findSwimmers(networks, picture);
      if (found.length === 0) return { kind: 'lost' };
      const one = pick(found, time);
      if (!one) return wanted ? { kind: 'lost' } : { kind: 'several', found };
      return (await seenIn(picture, one.square, time)) ?? { kind: 'lost' };
    },
  };
}
