import { computeReadings } from '#core/measures/compute-readings';
import { families } from '#core/measures/families';
import type { Reading } from '#core/measures/reading';
import { seeded } from '../../../../sample-clips/model/seeded';
import { contextOfSwum, markedSwum } from './mark-swum';
import type { Regime } from './regimes';
import { countOutcome, fateOf, noOutcome, type Outcome } from './tally';

/** Outcomes of one regime: of each reading, by its id. */
export type RegimeScore = Map<string, Outcome>;

/** The readings of a spoilt swim whose truth is known; other families are not read. */
export function judgedReadings(regime: Regime, seed: number): Judged {
  const { swum, swim, truth } = markedSwum(seed, regime.wish);
  const spoilt = regime.spoil(swim, seeded(seed ^ 0x1234567));
  const judged = families.filter(({ definitions }) => definitions.some(({ id }) => truth.has(id)));
  return { truth, readings: computeReadings(contextOfSwum(swum, spoilt), judged) };
}

export interface Judged {
  readonly truth: ReadonlyMap<string, number>;
  readonly readings: readonly Reading[];
}

/** Draws one swim, marks it whole, spoils the marks as the regime says, and counts what became of each reading. */
export function scoreSwim(regime: Regime, seed: number, into: RegimeScore): void {
  const { truth, readings } = judgedReadings(regime, seed);
  for (const reading of readings) {
    if (!fateOf(reading, truth)) continue;
    const tally = into.get(reading.id) ?? noOutcome();
    countOutcome(reading, truth, tally);
    into.set(reading.id, tally);
  }
}

/** Outcomes of several tallies together. */
export function summed(tallies: Iterable<Outcome>): Outcome {
  const all = noOutcome();
  for (const tally of tallies)
    for (const key of Object.keys(all) as (keyof Outcome)[]) all[key] += tally[key];
  return all;
}

/** Readings that gave a value, doubted or not. */
export const computedIn = (tally: Outcome): number => tally.held + tally.near + tally.doubted + tally.gross;
