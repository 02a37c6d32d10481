import { seededUniform } from '../uncertainty/seeded-uniform';

/** One repeat of a planned trial. */
export interface PlannedTrialRepeat {
  /** Place in the order to be swum, from 0. */
  readonly position: number;
  /** Every condition comes once a round; from 0. */
  readonly round: number;
  readonly condition: string;
}

export type TrialPlanFault =
  | { readonly code: 'too-few-conditions' }
  | { readonly code: 'condition-twice'; readonly condition: string }
  | { readonly code: 'repeats-out-of-range' }
  | { readonly code: 'seed-not-whole' };

export type TrialPlan =
  | { readonly ok: true; readonly repeats: readonly PlannedTrialRepeat[] }
  | { readonly ok: false; readonly fault: TrialPlanFault };

/** Most repeats of a condition that can be planned in one go. Our default. */
const mostPlanned = 50;

/**
 * A random order in rounds: every condition once a round, shuffled anew for each, so that tiredness and learning fall on
 * all alike and no condition is ever done with before another has begun. `seed` is a whole number of the caller's; the
 * same seed gives the same order. Orders come out equally often but for the generator's own limits.
 */
export function trialPlan(conditions: readonly string[], repeatsEach: number, seed: number): TrialPlan {
  if (conditions.length < 2) return refused({ code: 'too-few-conditions' });
  const twice = conditions.find((each, i) => conditions.indexOf(each) < i);
  if (twice !== undefined) return refused({ code: 'condition-twice', condition: twice });
  if (!Number.isInteger(repeatsEach) || repeatsEach < 1 || repeatsEach > mostPlanned)
    return refused({ code: 'repeats-out-of-range' });
  if (!Number.isSafeInteger(seed)) return refused({ code: 'seed-not-whole' });
  const random = seededUniform(seed);
  const repeats: PlannedTrialRepeat[] = [];
  for (let round = 0; round < repeatsEach; round++)
    for (const condition of shuffled(conditions, random))
      repeats.push({ position: repeats.length, round, condition });
  return { ok: true, repeats };
}

/** Fisher and Yates' shuffle of a copy. */
function shuffled<T>(list: readonly T[], random: () => number): readonly T[] {
  const left = [...list];
  const drawn: T[] = [];
  while (left.length > 0) drawn.push(...left.splice(Math.floor(random() * left.length), 1));
  return drawn;
}

const refused = (fault: TrialPlanFault): TrialPlan => ({ ok: false, fault });
