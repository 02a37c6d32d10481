import type { Swimmer } from './squad-schema';

export type Target = Swimmer['targets'][number];

/**
 * The band that rules for a reading: the one with the latest first day, of equal days the later in the list. Null when
 * the coach set none or gave it up (both ends open).
 */
export function targetInForce(swimmer: Pick<Swimmer, 'targets'>, reading: string): Target | null {
  let rules: Target | null = null;
  for (const each of swimmer.targets)
    if (each.reading === reading && (!rules || (each.from ?? '') >= (rules.from ?? ''))) rules = each;
  return rules && (rules.low !== null || rules.high !== null) ? rules : null;
}
