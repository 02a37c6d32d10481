/** One run's pictures that were fed and have not come out, in showing order. */
interface RunOnTheWay {
  readonly run: number;
  ranks: number[];
}

/** What it means that a picture came out of the decoder. */
export interface CameOut {
  /** Its place in showing order; null where it was not waited for: decoded without what it leans on, or given up. */
  readonly rank: number | null;
  /** Those that should have come before it, and will not come any more. */
  readonly passedOver: readonly number[];
}

/**
 * Pictures inside a decoder, named by the run they belong to and their place in showing order. A decoder fed with one run
 * after another gives them run by run, and within a run in showing order.
 */
export function createPicturesOnTheWay() {
  let runs: RunOnTheWay[] = [];
  const all = (): number[] => runs.flatMap(({ ranks }) => ranks);
  return {
    begin(run: number): void {
      runs.push({ run, ranks: [] });
    },
    /** A picture of the newest run goes in. */
    feed(rank: number): void {
      const ranks = runs.at(-1)?.ranks;
      if (!ranks) return;
      let place = ranks.length;
      while (place > 0 && (ranks[place - 1] as number) > rank) place -= 1;
      ranks.splice(place, 0, rank);
    },
    /** A picture came out; with `inTurn` it is the first one waited for, whatever it is named. */
    take(run: number, rank: number, inTurn: boolean): CameOut {
      const place = runs.findIndex((each) => each.run === run);
      if (place < 0) return { rank: null, passedOver: [] };
      const earlier = runs.slice(0, place).flatMap(({ ranks }) => ranks);
      runs = runs.slice(place);
      const own = runs[0];
      const which = inTurn ? 0 : (own?.ranks.indexOf(rank) ?? -1);
      const found = own?.ranks[which] ?? null;
      if (!own || found === null) return { rank: null, passedOver: earlier };
      const passedOver = [...earlier, ...own.ranks.slice(0, which)];
      own.ranks = own.ranks.slice(which + 1);
      return { rank: found, passedOver };
    },
    has: (rank: number): boolean => runs.some(({ ranks }) => ranks.includes(rank)),
    all,
    /** The decoder has been emptied: tells what was still in it. */
    forget(): number[] {
      const left = all();
      runs = [];
      return left;
    },
  };
}
