import { levelOf, sortedLevels, type TrialFactor, type TrialRow } from '#core/practice/trial-row';

/** The conditions there are in a trial, in their fixed order; repeats of which it is not said have none. */
export function levelsAsked(rows: readonly TrialRow[], factor: TrialFactor): readonly string[] {
  return sortedLevels(
    rows.flatMap((row) => levelOf(row, factor) ?? []),
    factor,
  );
}
