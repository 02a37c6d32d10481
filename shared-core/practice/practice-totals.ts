import { group } from 'd3-array';
import type { SwimCard } from '../swim-file/swim-schema';
import type { Practice } from './practice-schema';
import { type Basis, type SwumPart, swumParts } from './swum-part';
import { type Work, workKey } from './work';

type Aid = SwimCard['aids'][number];

/** Metres with aids and without. Whatever is done with an aid is to be matched by as much without [common practice]. */
interface AidBalance {
  readonly aidedMetres: number;
  readonly unaidedMetres: number;
  /** Metres without aids still to be swum; 0 when they match. */
  readonly shortfallMetres: number;
  readonly matched: boolean;
}

interface WorkBalance extends AidBalance {
  readonly work: Omit<Work, 'aids'>;
}

/** One-arm strokes on each side. Even: as many right as left. */
interface ArmBalance {
  readonly right: number;
  readonly left: number;
  /** Repeats swum on one arm whose strokes nobody said; with any, `even` is null. */
  readonly uncountedRepeats: number;
  readonly even: boolean | null;
}

export interface PracticeTotals extends AidBalance {
  readonly metres: number;
  readonly kickMetresBetween: number;
  readonly metresByAid: ReadonlyMap<Aid, number>;
  readonly metresBySide: ReadonlyMap<SwimCard['sideUp'], number>;
  /** The balance of each way of swimming that is done with aids at all, largest shortfall first. */
  readonly byWork: readonly WorkBalance[];
  readonly arms: ArmBalance;
}

/** Metres closer than this are equal: a centimetre, against rounding of yards. Our default. */
const centimetre = 0.01;

/** Sums of any parts: of an item, a practice, a swimmer or a period. Empty parts give zeros, matched and even. */
export function totalsOf(parts: readonly SwumPart[]): PracticeTotals {
  const metresByAid = new Map<Aid, number>();
  const metresBySide = new Map<SwimCard['sideUp'], number>();
  for (const { work, metres } of parts) {
    for (const aid of work.aids) metresByAid.set(aid, (metresByAid.get(aid) ?? 0) + metres);
    metresBySide.set(work.sideUp, (metresBySide.get(work.sideUp) ?? 0) + metres);
  }
  return {
    ...aidBalance(parts),
    metres: metresOf(parts),
    kickMetresBetween: metresOf(parts.filter(({ kind }) => kind === 'kick-between')),
    metresByAid,
    metresBySide,
    byWork: balanceByWork(parts),
    arms: armBalance(parts),
  };
}

/** Totals of one practice; see `swumParts` for who and what counts. */
export function practiceTotals(practice: Practice, swimmerId: string | null, basis: Basis): PracticeTotals {
  return totalsOf(swumParts(practice, swimmerId, basis));
}

/** Totals of practices from one day to another, both days included (ISO dates compare as text). */
export function periodTotals(
  practices: readonly Practice[],
  period: { readonly from: string; readonly to: string },
  swimmerId: string | null,
  basis: Basis,
): PracticeTotals {
  const inside = practices.filter(({ date }) => date >= period.from && date <= period.to);
  return totalsOf(inside.flatMap((practice) => swumParts(practice, swimmerId, basis)));
}

function aidBalance(parts: readonly SwumPart[]): AidBalance {
  const aidedMetres = metresOf(parts.filter(({ work }) => work.aids.length > 0));
  const unaidedMetres = metresOf(parts.filter(({ work }) => work.aids.length === 0));
  const gap = aidedMetres - unaidedMetres;
  const matched = gap <= centimetre;
  return { aidedMetres, unaidedMetres, shortfallMetres: matched ? 0 : gap, matched };
}

function balanceByWork(parts: readonly SwumPart[]): readonly WorkBalance[] {
  const groups = group(parts, ({ work }) => workKey(work));
  return [...groups.values()]
    .flatMap((alike): WorkBalance[] => {
      const first = alike[0];
      const balance = aidBalance(alike);
      if (!first || balance.aidedMetres === 0) return [];
      const { aids: _, ...work } = first.work;
      return [{ ...balance, work }];
    })
    .sort((a, b) => b.shortfallMetres - a.shortfallMetres);
}

function armBalance(parts: readonly SwumPart[]): ArmBalance {
  let right = 0;
  let left = 0;
  let uncountedRepeats = 0;
  for (const { oneArm } of parts) {
    if (!oneArm) uncountedRepeats += 1;
    right += oneArm?.right ?? 0;
    left += oneArm?.left ?? 0;
  }
  return { right, left, uncountedRepeats, even: uncountedRepeats > 0 ? null : right === left };
}

function metresOf(parts: readonly SwumPart[]): number {
  return parts.reduce((sum, { metres }) => sum + metres, 0);
}
