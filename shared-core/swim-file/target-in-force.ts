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

/** Everything that was ever aimed at for a reading, the latest first; what was given up is in it with both ends open. */
export function targetHistory(swimmer: Pick<Swimmer, 'targets'>, reading: string): readonly Target[] {
  return swimmer.targets
    .map((target, place) => ({ target, place }))
    .filter(({ target }) => target.reading === reading)
    .sort((a, b) => (b.target.from ?? '').localeCompare(a.target.from ?? '') || b.place - a.place)
    .map(({ target }) => target);
}

/**
 * The targets with one more. One set on the same day for the same reading is a correction and goes; older ones stay as
 * the history.
 */
export function withTarget(targets: readonly Target[], target: Target): Target[] {
  return [
    ...targets.filter(({ reading, from }) => reading !== target.reading || from !== target.from),
    target,
  ];
}
