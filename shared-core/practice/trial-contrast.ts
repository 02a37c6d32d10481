import { group } from 'd3-array';
import { conditionContrast, mostRepeats } from '../compare/condition-contrast';
import { studentQuantile975 } from '../uncertainty/student-quantile';
import { turnedTo } from '../measures/body/points/angles';
import { type Doubted, doubtOfBoth, undoubted } from '../measures/doubtful';
import type { ReadingUnit } from '../measures/reading';
import { neverCompared } from '../measures/never-compared';
import { levelOf, poolOf, sortedLevels, type TrialFactor, type TrialRow } from './trial-row';
import { type ContrastWarning, contrastWarnings } from './trial-warning';

/** One condition of one pool. */
interface TrialLevel {
  readonly level: string;
  readonly mean: number;
  readonly swimIds: readonly string[];
  /** What is doubtful of any of its repeats. */
  readonly doubted: Doubted;
}

interface ContrastBase {
  readonly readingId: string;
  readonly unit: ReadingUnit;
  /** Which like repeats these are; see `poolOf`. */
  readonly pool: string;
  readonly first: TrialLevel;
  readonly second: TrialLevel;
}

/** Second condition against the first, of one reading. */
export type TrialContrast =
  | (ContrastBase & {
      readonly status: 'contrast';
      /** Mean of the second minus mean of the first, with its 95 % interval. */
      readonly difference: number;
      readonly low: number;
      readonly high: number;
      readonly verdict: 'clear' | 'not-yet';
      /** Repeats more that would settle a difference of this size at this spread; null: more than 200 each. */
      readonly moreRepeats: { readonly first: number; readonly second: number } | null;
      readonly warnings: readonly ContrastWarning[];
    })
  | (ContrastBase & {
      readonly status: 'too-few';
      /** Repeats more before anything can be said: two of each condition are the least. */
      readonly moreRepeats: { readonly first: number; readonly second: number };
    })
  /** Neither the repeats nor their marks vary at all, which no real swim does. */
  | (ContrastBase & { readonly status: 'no-spread' });

export type TrialContrasts =
  | { readonly ok: true; readonly contrasts: readonly TrialContrast[] }
  /** The reading is one that is never compared, on account of harm. */
  | { readonly ok: false; readonly reason: 'never-compared' };

interface Repeat {
  readonly row: TrialRow;
  readonly level: string;
  readonly value: number;
  readonly ownVariance: number;
  readonly doubted: Doubted;
}

/**
 * Every pair of conditions of a factor, within repeats that are otherwise alike (see `poolOf`) and in one unit, in an
 * order that does not depend on the result. Repeats whose level or reading is unknown or not finite are left out.
 */
export function trialContrasts(
  rows: readonly TrialRow[],
  factor: TrialFactor,
  readingId: string,
): TrialContrasts {
  if (neverCompared(readingId)) return { ok: false, reason: 'never-compared' };
  const repeats = rows.flatMap((row) => {
    const level = levelOf(row, factor);
    const found = row.values.get(readingId);
    if (level === null || !found || !Number.isFinite(found.value) || !Number.isFinite(found.ownVariance))
      return [];
    const { value, ownVariance, unit } = found;
    return [{ row, level, value, ownVariance, unit, doubted: found }];
  });
  const contrasts: TrialContrast[] = [];
  for (const [pool, byUnit] of group(
    repeats,
    ({ row }) => poolOf(row, factor),
    ({ unit }) => unit,
  ))
    for (const [unit, each] of byUnit) {
      // directions go round: repeats at 179° and −179° lie 2° apart
      const about = each[0]?.value ?? 0;
      const like =
        unit === '°' ? each.map((repeat) => ({ ...repeat, value: turnedTo(about, repeat.value) })) : each;
      const byLevel = group(like, ({ level }) => level);
      const levels = sortedLevels(byLevel.keys(), factor);
      for (const [i, first] of levels.entries())
        for (const second of levels.slice(i + 1))
          contrasts.push(
            contrastOf(
              { readingId, unit, pool },
              factor,
              byLevel.get(first) ?? [],
              byLevel.get(second) ?? [],
            ),
          );
    }
  return { ok: true, contrasts };
}

function contrastOf(
  about: Pick<ContrastBase, 'readingId' | 'unit' | 'pool'>,
  factor: TrialFactor,
  first: readonly Repeat[],
  second: readonly Repeat[],
): TrialContrast {
  const base = { ...about, first: levelSum(first), second: levelSum(second) };
  const counts = { first: first.length, second: second.length };
  if (counts.first < 2 || counts.second < 2)
    return {
      ...base,
      status: 'too-few',
      moreRepeats: { first: Math.max(0, 2 - counts.first), second: Math.max(0, 2 - counts.second) },
    };
  const welch = conditionContrast(
    first.map(({ value }) => value),
    second.map(({ value }) => value),
  );
  const floor = markingHalf(meanVariance(first), meanVariance(second), counts.first, counts.second);
  const spread = welch ? (welch.high - welch.low) / 2 : 0;
  const half = Math.max(spread, floor);
  if (!(half > 0)) return { ...base, status: 'no-spread' };
  const difference = base.second.mean - base.first.mean;
  const clear = Math.abs(difference) > half;
  const needed = clear ? 0 : repeatsNeeded(Math.abs(difference), welch?.repeatsNeeded, first, second);
  return {
    ...base,
    status: 'contrast',
    difference,
    low: difference - half,
    high: difference + half,
    verdict: clear ? 'clear' : 'not-yet',
    moreRepeats: needed === null ? null : moreOf(needed, counts, clear),
    warnings: contrastWarnings(
      factor,
      first.map(({ row }) => row),
      second.map(({ row }) => row),
      floor > spread,
    ),
  };
}

/**
 * Half of the 95 % interval that marking alone would give, with Student's t for as many repeats as there are. Welch's
 * interval is never let below it: repeats that happen to agree better than they can be marked prove nothing (our rule).
 */
function markingHalf(firstVariance: number, secondVariance: number, first: number, second: number): number {
  return studentQuantile975(first + second - 2) * Math.sqrt(firstVariance / first + secondVariance / second);
}

function repeatsNeeded(
  size: number,
  welch: number | null | undefined,
  first: readonly Repeat[],
  second: readonly Repeat[],
): number | null {
  // null: not within the most repeats; undefined: nothing varies, so that marking alone decides
  if (welch === null) return null;
  for (let count = Math.max(2, welch ?? 2); count <= mostRepeats; count++)
    if (markingHalf(meanVariance(first), meanVariance(second), count, count) < size) return count;
  return null;
}

function moreOf(
  needed: number,
  counts: { readonly first: number; readonly second: number },
  clear: boolean,
): { first: number; second: number } {
  const more = { first: Math.max(0, needed - counts.first), second: Math.max(0, needed - counts.second) };
  // uneven counts can leave it open although each has enough for an even trial: then one more of each
  return clear || more.first + more.second > 0 ? more : { first: 1, second: 1 };
}

function levelSum(repeats: readonly Repeat[]): TrialLevel {
  return {
    level: repeats[0]?.level ?? '',
    mean: repeats.reduce((sum, { value }) => sum + value, 0) / repeats.length,
    swimIds: repeats.map(({ row }) => row.swimId),
    doubted: repeats.reduce((all, { doubted }) => doubtOfBoth(all, doubted), undoubted),
  };
}

function meanVariance(repeats: readonly Repeat[]): number {
  return repeats.reduce((sum, { ownVariance }) => sum + ownVariance, 0) / repeats.length;
}
