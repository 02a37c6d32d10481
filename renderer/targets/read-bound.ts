import { targetsWords } from '#core/words/targets';

/** A bound as typed: empty is an open end (null), a number with point or comma; undefined when it is neither. */
export function readBound(text: string): number | null | undefined {
  const trimmed = text.trim().replace(',', '.').replace('−', '-');
  if (trimmed === '') return null;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : undefined;
}

/** Why two typed bounds make no band, in words; null when they do. */
export function bandTrouble(low: number | null | undefined, high: number | null | undefined): string | null {
  if (low === undefined || high === undefined) return targetsWords('typeNumberOr');
  if (low === null && high === null) return targetsWords('typeAtLeastOne');
  return low !== null && high !== null && low > high ? targetsWords('lowerEndAbove') : null;
}
