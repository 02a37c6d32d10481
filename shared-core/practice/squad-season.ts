import type { Swimmer } from '../swim-file/squad-schema';
import { daysBetween } from './days-between';
import type { Practice } from './practice-schema';
import { periodTotals, type PracticeTotals } from './practice-totals';
import type { SeasonSwim } from './season-swim';

/** One swimmer in the squad's view. */
export interface SquadRow {
  readonly swimmerId: string;
  readonly name: string;
  /** Null: never filmed. */
  readonly lastFilmed: string | null;
  readonly daysSinceFilm: number | null;
  /** Of what was logged in the period. */
  readonly totals: PracticeTotals;
}

/**
 * Who has not been filmed and whose aided metres are not matched, in the order of need: never filmed first, then the
 * longest ago, then by name. `period.to` is taken as today; swims after it are left out.
 */
export function squadSeason(
  swimmers: readonly Pick<Swimmer, 'id' | 'name'>[],
  swims: readonly Pick<SeasonSwim, 'swimmerId' | 'day'>[],
  practices: readonly Practice[],
  period: { readonly from: string; readonly to: string },
): readonly SquadRow[] {
  const lastDay = new Map<string, string>();
  for (const { swimmerId, day } of swims)
    if (swimmerId !== null && day <= period.to && day > (lastDay.get(swimmerId) ?? ''))
      lastDay.set(swimmerId, day);
  return swimmers
    .map(({ id, name }): SquadRow => {
      const lastFilmed = lastDay.get(id) ?? null;
      return {
        swimmerId: id,
        name,
        lastFilmed,
        daysSinceFilm: lastFilmed === null ? null : daysBetween(lastFilmed, period.to),
        totals: periodTotals(practices, period, id, 'logged'),
      };
    })
    .sort((a, b) => {
      const waited = (row: SquadRow): number => row.daysSinceFilm ?? Number.MAX_SAFE_INTEGER;
      return waited(b) - waited(a) || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0);
    });
}
