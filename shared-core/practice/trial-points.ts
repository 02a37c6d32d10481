import { neverCompared } from '../measures/never-compared';
import { levelOf, poolOf, type TrialFactor, type TrialRow, type TrialValue } from './trial-row';
import { z95 } from '../uncertainty/normal-quantile';

/** A reading on an axis, with half of its 95 % interval from marking. */
type TrialAxis = TrialValue & { readonly half: number };

/** One repeat in a plot of one reading against another, with halves of the 95 % intervals from marking. */
export interface TrialPoint {
  readonly swimId: string;
  /** Level of the factor, null when not said. */
  readonly level: string | null;
  /** Only points of one pool belong together in the plot; see `poolOf`. */
  readonly pool: string;
  readonly aided: boolean;
  readonly x: TrialAxis;
  readonly y: TrialAxis;
}

/** Repeats that have both readings. Empty when either reading is one that is never compared. */
export function trialPoints(
  rows: readonly TrialRow[],
  factor: TrialFactor,
  ids: { readonly x: string; readonly y: string },
): readonly TrialPoint[] {
  if (neverCompared(ids.x) || neverCompared(ids.y)) return [];
  return rows.flatMap((row) => {
    const x = row.values.get(ids.x);
    const y = row.values.get(ids.y);
    if (!x || !y) return [];
    const aided = row.work.aids.length > 0;
    return [
      {
        swimId: row.swimId,
        level: levelOf(row, factor),
        pool: poolOf(row, factor),
        aided,
        x: axis(x),
        y: axis(y),
      },
    ];
  });
}

function axis(of: TrialValue): TrialAxis {
  return { ...of, half: z95 * Math.sqrt(of.ownVariance) };
}
