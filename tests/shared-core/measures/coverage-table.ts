import type { ComputedReading, Interval, Reading } from '#core/measures/reading';

export interface Tally {
  drawn: number;
  held: number;
  /** Sums of (value − truth) / half-width, and of its square. */
  lean: number;
  square: number;
  /** Sums of value − truth and of half-widths: a spread over two cycles can be near nothing by chance. */
  off: number;
  halves: number;
  missing: number;
  /** Whole numbers: right, or a mark is missing. */
  counts: number;
}

export interface CoverageRow {
  readonly id: string;
  /** A count of marks: its interval is the rounding of a whole number and holds the truth each time. */
  readonly isCount: boolean;
  readonly drawn: number;
  readonly missing: number;
  readonly held: number;
  readonly lean: number;
  readonly spread: number;
}

/** A share counted over fewer swims than this says nothing. Our default. */
const fewest = 50;

/** Standard error of a share of 95 % counted over so many draws. */
function chanceOf(drawn: number): number {
  return Math.sqrt((0.95 * 0.05) / drawn);
}

/**
 * Chance that at most `held` of `drawn` intervals hold the truth where each does so with probability `share`: the lower tail
 * of the binomial distribution, summed term by term. A share counted over few swims is far from normal: of 64 swims, one
 * row in eighty holds 54 or fewer that holds 93 in 100 in truth.
 */
export function chanceOfSoFew(held: number, drawn: number, share: number): number {
  // from the most probable end down, by the ratio of neighbouring terms, in logarithms so that none is lost
  let term = drawn * Math.log(1 - share);
  let sum = Math.exp(term);
  for (let k = 1; k <= held; k++) {
    term += Math.log((drawn - k + 1) / k) + Math.log(share / (1 - share));
    sum += Math.exp(term);
  }
  return Math.min(1, sum);
}

/** Counts how often a 95 % interval of each reading held the truth, and how far values lean. */
export class Coverage {
  readonly #tallies = new Map<string, Tally>();
  readonly #question: Interval['question'];

  constructor(question: Interval['question'] = 'this-swim') {
    this.#question = question;
  }

  add(readings: readonly Reading[], truth: ReadonlyMap<string, number>): void {
    for (const reading of readings) {
      let real = truth.get(reading.id);
      if (real === undefined) continue;
      const tally = this.#tallies.get(reading.id) ?? {
        drawn: 0,
        held: 0,
        lean: 0,
        square: 0,
        off: 0,
        halves: 0,
        missing: 0,
        counts: 0,
      };
      this.#tallies.set(reading.id, tally);
      const interval = reading.status === 'missing' ? null : this.#asked(reading);
      if (reading.status === 'missing' || !interval) {
        tally.missing += 1;
        continue;
      }
      // a phase comes round again after a whole turn
      if (reading.id.startsWith('harmonic-phase')) real += 360 * Math.round((reading.value - real) / 360);
      const { low, high } = interval;
      tally.drawn += 1;
      if (reading.unit === 'count') tally.counts += 1;
      if (low <= real && real <= high) tally.held += 1;
      const off = (reading.value - real) / ((high - low) / 2);
      tally.lean += off;
      tally.square += off * off;
      tally.off += reading.value - real;
      tally.halves += (high - low) / 2;
    }
  }

  #asked({ interval, otherInterval }: ComputedReading): Interval | null {
    return [interval, otherInterval].find((each) => each?.question === this.#question) ?? null;
  }

  /** What was counted, to be merged elsewhere. */
  tallies(): readonly (readonly [string, Tally])[] {
    return [...this.#tallies];
  }

  merge(tallies: readonly (readonly [string, Tally])[]): void {
    for (const [id, other] of tallies) {
      const own = this.#tallies.get(id);
      if (!own) this.#tallies.set(id, { ...other });
      else for (const key of Object.keys(own) as (keyof Tally)[]) own[key] += other[key];
    }
  }

  /** Readings whose interval does not hold the truth 93 to 97 times in 100, or that lean by a tenth of it. */
  failing(): readonly string[] {
    return this.words(
      ({ held, lean, isCount, drawn }) =>
        drawn >= fewest && (held < 0.93 || (held > 0.97 && !isCount) || Math.abs(lean) > 0.2),
    );
  }

  /** Rows in words: held, lean, spread of the errors against the interval's claim (1: as claimed), swims. */
  words(which: (row: CoverageRow) => boolean = () => true): readonly string[] {
    return this.rows()
      .filter(which)
      .map(
        ({ id, held, lean, spread, drawn }) =>
          `${id} ${(100 * held).toFixed(1)} ${lean.toFixed(3)} ${spread.toFixed(2)} ${drawn}`,
      );
  }

  rows(): CoverageRow[] {
    const drawn = [...this.#tallies].filter(([, t]) => t.drawn > 0);
    return drawn.map(([id, t]) => ({
      id,
      isCount: t.counts > 0,
      drawn: t.drawn,
      missing: t.missing,
      held: t.held / t.drawn,
      spread: 1.96 * Math.sqrt(t.square / t.drawn),
      lean: this.#question === 'this-swimmer' ? t.off / t.halves : t.lean / t.drawn,
    }));
  }

  markdown(): string {
    const head =
      '| reading | swims | not computed | truth held, % | by chance ± | bias / half-width |\n| --- | ---: | ---: | ---: | ---: | ---: |';
    const few = this.rows().filter(({ drawn }) => drawn < fewest);
    const told = this.rows().filter(({ drawn }) => drawn >= fewest);
    const lines = told.map(
      (r) =>
        `| ${r.id} | ${r.drawn} | ${r.missing} | ${(100 * r.held).toFixed(1)} | ${(100 * chanceOf(r.drawn)).toFixed(1)} | ${r.lean.toFixed(3)} |`,
    );
    if (few.length === 0) return [head, ...lines].join('\n');
    const named = few.map(({ id, drawn }) => `${id} (${drawn})`).join(', ');
    return [
      head,
      ...lines,
      '',
      `Seen in fewer than ${fewest} of these swims, too few to count: ${named}.`,
    ].join('\n');
  }
}
