import type { LandmarkName } from '../marks/landmark';
import type { MarkedPoint } from './marked-points';

/** Frames to be followed as one, both ends included. */
export interface FramePiece {
  readonly first: number;
  readonly last: number;
}

/**
 * Cuts what lies between the marks into pieces that need nothing of each other: a cut is made on every frame on which
 * no landmark is between two of its marks without being marked there itself. Frames before a landmark's first mark and
 * after its last are in no piece of it. Ascending; empty when no landmark is marked twice with frames between.
 */
export function followPieces(marks: readonly MarkedPoint[]): readonly FramePiece[] {
  const frames = new Map<LandmarkName, Set<number>>();
  for (const { landmark, frame } of marks) {
    const own = frames.get(landmark) ?? new Set<number>();
    own.add(frame);
    frames.set(landmark, own);
  }
  const gaps: FramePiece[] = [];
  for (const own of frames.values()) {
    const sorted = [...own].sort((a, b) => a - b);
    sorted.slice(1).forEach((last, i) => {
      const first = sorted[i] ?? last;
      if (last - first > 1) gaps.push({ first, last });
    });
  }
  gaps.sort((a, b) => a.first - b.first || a.last - b.last);
  const pieces: FramePiece[] = [];
  for (const gap of gaps) {
    const before = pieces.at(-1);
    if (before && gap.first < before.last) {
      pieces[pieces.length - 1] = { first: before.first, last: Math.max(before.last, gap.last) };
    } else pieces.push(gap);
  }
  return pieces;
}

/**
 * Joins pieces that touch, as long as one has no more than `mostFrames`: followed as one, the body's motion goes on
 * through the marks between them.
 */
export function joinPieces(pieces: readonly FramePiece[], mostFrames: number): readonly FramePiece[] {
  const joined: FramePiece[] = [];
  for (const piece of pieces) {
    const before = joined.at(-1);
    if (before && before.last === piece.first && piece.last - before.first < mostFrames)
      joined[joined.length - 1] = { first: before.first, last: piece.last };
    else joined.push(piece);
  }
  return joined;
}
