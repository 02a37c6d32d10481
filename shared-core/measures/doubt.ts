/**
 * What a computed reading may be wrong about although it is printed: marks that may be incomplete or misplaced, or times no
 * person swims. A doubt speaks of marks and film, never of the swimmer.
 */
export const doubtCodes = [
  'times-unusual',
  'amplitude-unusual',
  'kicks-may-be-missing',
  'strokes-may-be-missing',
  'marked-twice',
  'marks-uneven',
  'tops-bottoms-may-be-exchanged',
  'hands-out-of-order',
  'landmarks-missing-between',
  'goes-other-way',
  'distances-run-backward',
  'marks-past-end',
  'marking-error-large',
] as const;
export type DoubtCode = (typeof doubtCodes)[number];

export interface Doubt {
  readonly code: DoubtCode;
  /** Frames of the marks to look at, in order; none where no single mark is meant. */
  readonly frames: readonly number[];
}

/** Doubts of several sources as one list: each code once, with all the frames named under it. */
export function joinedDoubts(...lists: readonly (readonly Doubt[])[]): readonly Doubt[] {
  const frames = new Map<DoubtCode, Set<number>>();
  for (const doubt of lists.flat()) {
    const known = frames.get(doubt.code) ?? new Set<number>();
    for (const frame of doubt.frames) known.add(frame);
    frames.set(doubt.code, known);
  }
  return doubtCodes.flatMap((code) => {
    const found = frames.get(code);
    return found ? [{ code, frames: [...found].sort((a, b) => a - b) }] : [];
  });
}
