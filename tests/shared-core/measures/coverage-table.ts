import type { ComputedReading, Interval, Reading } from '#core/measures/reading';

interface Tally {
  drawn: number;
  held: number;
  /** Sum of (value − truth) / half-width. */
  lean: number;
  /** Sums of value − truth and of half-widths: a spread over two cycles can be near nothing by chance. */
  off: number;
  halves: number;
  missing: number;
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
        off: 0,
        halves: 0,
        missing: 0,
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
      if (low <= real && real <= high) tally.held += 1;
      tally.lean += (reading.value - real) / ((high - low) / 2);
      tally.off += reading.value - real;
      tally.halves += (high - low) / 2;
    }
  }

  #asked({ interval, otherInterval }: ComputedReading): Interval | null {
    return [interval, otherInterval].find((each) => each?.question === this.#question) ?? null;
  }

  /** Readings whose interval does not hold the truth 93 to 97 times in 100, or that lean by a tenth of it. */
  failing(): readonly string[] {
    return this.rows()
      .filter(({ held, lean }) => held < 0.93 || held > 0.97 || Math.abs(lean) > 0.2)
      .map(({ id, held, lean }) => `${id} ${(100 * held).toFixed(1)} ${lean.toFixed(3)}`);
  }

  rows(): { id: string; drawn: number; missing: number; held: number; lean: number }[] {
    return [...this.#tallies].map(([id, t]) => ({
      id,
      drawn: t.drawn,
      missing: t.missing,
      held: t.held / t.drawn,
      lean: this.#question === 'this-swimmer' ? t.off / t.halves : t.lean / t.drawn,
    }));
  }

  markdown(): string {
    const head =
      '| reading | swims | not computed | truth held, % | bias / half-width |\n| --- | ---: | ---: | ---: | ---: |';
    const lines = this.rows().map(
      (r) => `| ${r.id} | ${r.drawn} | ${r.missing} | ${(100 * r.held).toFixed(1)} | ${r.lean.toFixed(3)} |`,
    );
    return [head, ...lines].join('\n');
  }
}
