import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Drill } from '#core/practice/drill-schema';
import { plannedTrialItems } from '#core/practice/planned-trial-items';
import type { Practice } from '#core/practice/practice-schema';
import { trialPlan } from '#core/practice/trial-plan';
import type { TrialRow } from '#core/practice/trial-row';
import type { Trial } from '#core/practice/trial-schema';
import type { Squad } from '#core/swim-file/squad-schema';
import { isoDayOf } from '../card/remembered-card';
import { newPractice } from '../sets/new-practice';
import { levelWords, trialTitle } from './trial-words';
import { trialsWords } from '#core/words/trials';

interface Around {
  readonly rows: readonly TrialRow[];
  readonly swims: readonly SwimSummary[];
  readonly squad: Squad;
  readonly own: readonly Drill[];
}

/** A trial that has no swim yet is planned as streamlined kick: our default, the coach's to change. */
const usualWork = {
  stroke: 'dolphin-kick',
  drill: '',
  arms: 'stretched',
  sideUp: 'front',
  aids: [],
} as const;

/**
 * A new practice with a trial's drawn order as its items: swum as the trial's first swim was, by the swimmer of its
 * swims, or by the squad while there is none. Null when no order is drawn.
 */
export function practiceOfTrial(
  trial: Trial,
  { rows, swims, squad, own }: Around,
  makeId: () => string,
  now: Date,
): Practice | null {
  const drawn = trial.plan ? trialPlan(trial.plan.conditions, trial.plan.repeatsEach, trial.plan.seed) : null;
  if (!drawn?.ok) return null;
  const [first] = rows;
  const swimmers = [...new Set(rows.flatMap(({ swimmerId }) => swimmerId ?? []))];
  const who = swimmers.length > 0 ? swimmers : squad.swimmers.map(({ id }) => id).slice(0, 200);
  const practice = newPractice(makeId(), isoDayOf(now.getTime()), now.toISOString(), who);
  return {
    ...practice,
    title: trialsWords('trialTitle', { trialTitle: trialTitle(trial.title) }).slice(0, 200),
    note: trialsWords('orderDrawnLot'),
    invented: trial.invented,
    items: plannedTrialItems(drawn.repeats, {
      factor: trial.factor,
      work: first?.work ?? usualWork,
      distanceMetres:
        swims.find(({ id }) => id === first?.swimId)?.card.distanceMetres ?? practice.poolMetres,
      words: (condition) => levelWords(trial.factor, condition, own),
      own,
      makeId,
    }),
  };
}
