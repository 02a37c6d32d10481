import type { Reading } from '#core/measures/reading';

interface Tally {
  drawn: number;
  held: number;
  /** Sum of (value − truth) / half-width. */
  lean: number;
  missing: number;
}

/** Counts how often the 95 % interval "this swim" of each reading held the truth, and how far values lean. */
export class Coverage {
  readonly #tallies = new Map<string, Tally>();

  add(readings: readonly Reading[], truth: ReadonlyMap<string, number>): void {
    for (const reading of readings) {
      const real = truth.get(reading.id);
      if (real === undefined) continue;
      const tally = this.#tallies.get(reading.id) ?? { drawn: 0, held: 0, lean: 0, missing: 0 };
      this.#tallies.set(reading.id, tally);
      if (reading.status === 'missing') {
        tally.missing += 1;
        continue;
      }
      const { low, high } = reading.interval;
      tally.drawn += 1;
      if (low <= real && real <= high) tally.held += 1;
      tally.lean += (reading.value - real) / ((high - low) / 2);
    }
  }

  rows(): { id: string; drawn: number; missing: number; held: number; lean: number }[] {
    return [...this.#tallies].map(([id, t]) => ({
      id,
      drawn: t.drawn,
      missing: t.missing,
      held: t.held / t.drawn,
      lean: t.lean / t.drawn,
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
