import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextPiece } from '#electron/media/next-piece';

const film = { frames: 1000, focus: 0, near: 60, far: 300, inPairs: false };

describe('the next piece of a working copy', () => {
  it('is a short one where the coach looks, as long as nothing is there', () => {
    expect(nextPiece({ ...film, made: [], focus: 500 })).toEqual({ first: 485, last: 544 });
    expect(nextPiece({ ...film, made: [], focus: 0 })).toEqual({ first: 0, last: 59 });
    expect(nextPiece({ ...film, made: [], focus: 999 })).toEqual({ first: 940, last: 999 });
  });

  it('goes on forward from where the coach is, then backward, in longer pieces', () => {
    const here = { first: 485, last: 544 };
    expect(nextPiece({ ...film, made: [here], focus: 500 })).toEqual({ first: 545, last: 664 });
    const ahead = { first: 545, last: 999 };
    expect(nextPiece({ ...film, made: [here, ahead], focus: 500 })).toEqual({ first: 365, last: 484 });
  });

  it('leaves out nothing and makes nothing twice, wherever the coach goes; fields stay together', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 700 }),
        fc.boolean(),
        fc.array(fc.nat(2000), { minLength: 1 }),
        (half, inPairs, walk) => {
          const frames = inPairs ? 2 * half : half;
          const made: { first: number; last: number }[] = [];
          for (let n = 0; ; n++) {
            const focus = (walk[n % walk.length] ?? 0) % frames;
            const piece = nextPiece({ frames, made, focus, near: 30, far: 100, inPairs });
            if (!piece) break;
            if (inPairs) expect([piece.first % 2, piece.last % 2]).toEqual([0, 1]);
            const missing = !made.some(({ first, last }) => focus >= first && focus <= last);
            if (missing) expect(piece.first <= focus && focus <= piece.last).toBe(true);
            made.push(piece);
          }
          made.sort((a, b) => a.first - b.first);
          const all = made.flatMap(({ first, last }) =>
            Array.from({ length: last - first + 1 }, (_, i) => first + i),
          );
          expect(all).toEqual(Array.from({ length: frames }, (_, i) => i));
        },
      ),
      { numRuns: 200 },
    );
  });
});
