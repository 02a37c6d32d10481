import type { PairRow } from '#core/compare/pair-table';
import type { ReadingGroup } from '#core/measures/reading';
import { isShare, isVariant, isWanted, readingOrder } from '../readings/arrange-readings';

export interface DifferenceGroup {
  readonly group: ReadingGroup;
  /** Shown at once: what a coach asks for first, and whatever is clear. */
  readonly first: readonly PairRow[];
  readonly more: readonly PairRow[];
}

/** The table in the order of the readings panel; shares of the stroke and variants are one press away unless clear. */
export function arrangeDifferences(rows: readonly PairRow[]): readonly DifferenceGroup[] {
  const ids = new Map(rows.map((row) => [row.definition.id, row]));
  return readingOrder.flatMap((group): DifferenceGroup[] => {
    const own = rows.filter((row) => row.definition.group === group);
    if (own.length === 0) return [];
    const isFirst = ({ definition, verdict }: PairRow): boolean =>
      verdict !== 'missing' &&
      !isShare(definition.id, ids) &&
      (isWanted(definition.id) || (verdict === 'clear' && !isVariant(definition.id)));
    return [{ group, first: own.filter(isFirst), more: own.filter((row) => !isFirst(row)) }];
  });
}
