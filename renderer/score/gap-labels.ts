export interface GapWords {
  readonly ms: string;
  readonly percent: string;
}

export interface GapToLabel {
  /** Of the pair that is written first. */
  readonly first: boolean;
  /** Where its words would begin, and where its tie begins; pixels. */
  readonly left: number;
  readonly start: number;
  readonly words: GapWords;
  /** Written before its tie instead of after it. */
  readonly before: boolean;
}

export interface GapLabel {
  /** `left` is where the words end. */
  readonly end?: boolean;
  readonly left: number;
  /** Pixels below the first row. */
  readonly down: number;
  readonly row: 'first' | 'second';
  /** Null where it does not fit; the tie's title still says it. */
  readonly shown: GapWords | null;
}

/** Our estimates of a figure's width in the score's small and smaller type, pixels. */
const letter = 7.9;
const small = 6.6;
/** The second pair's row is below the two lines of the first. */
const secondDown = 28;

/**
 * Words of the ties, in order of `left`: the first pair gets milliseconds over percent, as long as its next neighbour lets
 * it; the second pair one line in a row of its own, where there is one. Tighter, else not at all; never without units.
 */
export function placeGapLabels(
  gaps: readonly GapToLabel[],
  room: { readonly right: number; readonly twoLines: boolean; readonly ownRow: boolean },
): readonly GapLabel[] {
  // where the words of the first pair end so far
  let taken = Number.NEGATIVE_INFINITY;
  return gaps.map((gap, index): GapLabel => {
    const next = gaps.slice(index + 1).find(({ first, before }) => first === gap.first && !before);
    // a tie crosses the first row only: the second pair's words end where the next of them begin
    const end = next ? (gap.first ? next.start : next.left) : room.right;
    const width = end - gap.left - 4;
    if (gap.first) {
      const after = fitted(gap.words, width, letter, room.twoLines);
      const ends = gap.start - 6;
      // the next stroke's tie may leave no room after this one, where the stroke itself has it before
      const before = after ? null : fitted(gap.words, ends - taken - 6, letter, room.twoLines);
      const longest = Math.max(gap.words.ms.length, room.twoLines ? gap.words.percent.length : 0);
      if (after) taken = gap.left + longest * letter;
      else if (before) taken = ends;
      return before
        ? { left: ends, end: true, down: 0, row: 'first', shown: before }
        : { left: gap.left, down: 0, row: 'first', shown: after };
    }
    // a gap whose leg is usually earlier has its room before it
    if (gap.before) {
      const free = gap.start - 6 - (gaps[index - 1]?.start ?? 0);
      return {
        left: gap.start - 6,
        down: secondDown,
        row: 'second',
        end: true,
        shown: room.ownRow ? fitted(gap.words, free, small, false) : null,
      };
    }
    const both = { ms: `${gap.words.ms} ${gap.words.percent}`, percent: '' };
    const long = both.ms.length * small <= width ? both : null;
    return {
      left: gap.left,
      down: secondDown,
      row: 'second',
      shown: room.ownRow ? (long ?? fitted(gap.words, width, small, false)) : null,
    };
  });
}

/** Both figures, or the milliseconds alone, always with their unit: a bare number could be either. */
function fitted(words: GapWords, width: number, each: number, twoLines: boolean): GapWords | null {
  const fits = ({ ms, percent }: GapWords): boolean =>
    Math.max(ms.length, twoLines ? percent.length : 0) * each <= width;
  if (fits(words)) return words;
  const tight = { ms: words.ms.replace(' ms', '\u202fms'), percent: words.percent.replace(' %', '\u202f%') };
  // a narrow space is about a quarter of a figure
  return Math.max(tight.ms.length, twoLines ? tight.percent.length : 0) * each - 0.75 * each <= width
    ? tight
    : null;
}
