import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { SwimGroup } from '../swims/filter-swims';

/** One row of tiles of one swimmer; a swimmer without swims has one empty row. */
export interface ShelfRow {
  readonly key: string;
  readonly group: SwimGroup;
  readonly swims: readonly SwimSummary[];
  readonly first: boolean;
  readonly last: boolean;
}

/** The rows of the shelf from top to bottom, so that only those in sight need be drawn. */
export function shelfRows(groups: readonly SwimGroup[], columns: number): readonly ShelfRow[] {
  const wide = Math.max(1, columns);
  return groups.flatMap((group) => {
    const count = Math.max(1, Math.ceil(group.swims.length / wide));
    return Array.from({ length: count }, (_, at): ShelfRow => {
      return {
        key: `${group.key}/${at}`,
        group,
        swims: group.swims.slice(at * wide, (at + 1) * wide),
        first: at === 0,
        last: at === count - 1,
      };
    });
  });
}

/** Columns of tiles that fit: as many of the least width as there is room for, with the gaps between. */
export function columnsFor(width: number, leastTile: number, gap: number): number {
  return Math.max(1, Math.floor((width + gap) / (leastTile + gap)));
}
