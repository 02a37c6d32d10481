import type { FrameRange } from '#core/timeline/frame-range';

/** Where a working copy stands: what is made of it, and where the coach looks. */
export interface PieceNeeds {
  readonly frames: number;
  /** Pieces made, in any order; they never overlap. */
  readonly made: readonly FrameRange[];
  readonly focus: number;
  /** Frames of a piece where the coach waits for it, and of one made ahead. */
  readonly near: number;
  readonly far: number;
  /** Both fields of a picture are made together: pieces begin at every second frame only. */
  readonly inPairs: boolean;
}

/**
 * The piece of a working copy to make next, or null when there is none left: around the coach where nothing is yet, a short
 * one, so that it is there soon; else on from what is made there, forward before backward; else the nearest that is missing.
 * Longer pieces cost less, as each begins with decoding what its first frame leans on.
 */
export function nextPiece({ frames, made, focus, near, far, inPairs }: PieceNeeds): FrameRange | null {
  const gaps = gapsBetween(made, frames);
  const at = gaps.find(({ first, last }) => focus >= first && focus <= last);
  // a rest too short to be worth a piece of its own goes with its neighbour
  const crumb = near >> 1;
  const pair = (frame: number): number => (inPairs ? frame - (frame % 2) : frame);
  if (at) {
    // at the end of what is missing the coach can only go back
    const early = pair(Math.max(at.first, Math.min(focus - (near >> 2), at.last + 1 - near)));
    const first = early - at.first < crumb ? at.first : early;
    const end = pair(first + near);
    return { first, last: at.last - end < crumb ? at.last : end - 1 };
  }
  const distance = ({ first, last }: FrameRange): number => (first > focus ? first - focus : focus - last);
  const turn = (gap: FrameRange): number => distance(gap) + (gap.first > focus ? 0 : near);
  const [gap] = gaps.sort((a, b) => turn(a) - turn(b));
  if (!gap) return null;
  const length = pair(distance(gap) > near ? far : Math.min(far, 2 * near));
  if (gap.first > focus) {
    const end = gap.first + length;
    return { first: gap.first, last: gap.last - end < crumb ? gap.last : end - 1 };
  }
  const first = pair(gap.last + 1 - length);
  return { first: first - gap.first < crumb ? gap.first : first, last: gap.last };
}

/** What is missing, in order. */
function gapsBetween(made: readonly FrameRange[], frames: number): FrameRange[] {
  const gaps: FrameRange[] = [];
  let next = 0;
  for (const { first, last } of [...made].sort((a, b) => a.first - b.first)) {
    if (first > next) gaps.push({ first: next, last: first - 1 });
    next = Math.max(next, last + 1);
  }
  if (next < frames) gaps.push({ first: next, last: frames - 1 });
  return gaps;
}
