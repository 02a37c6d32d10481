import { trialPlan } from '#core/practice/trial-plan';
import { type Trial, trialFileVersion } from '#core/practice/trial-schema';
import { noTags } from '#core/swim-file/condition-tags';
import { monthScenarios } from './month-scenarios';
import type { Scenario } from './scenario';

type Asked = Pick<Trial, 'id' | 'title' | 'factor' | 'readings' | 'note'> & {
  readonly day: string;
  readonly conditions: readonly [string, string];
  readonly repeatsEach: number;
  readonly seed: number;
  readonly conditionOf: (scenario: Scenario) => string | null;
};

/** A trial over swims of the month, swum in the very order that was drawn by lot. */
function asked({ day, conditions, repeatsEach, seed, conditionOf, ...trial }: Asked): Trial {
  const plan = trialPlan(conditions, repeatsEach, seed);
  if (!plan.ok) throw new Error(plan.fault.code);
  const left = new Map(
    conditions.map((condition) => [
      condition,
      monthScenarios.filter((each) => conditionOf(each) === condition),
    ]),
  );
  return {
    format: 'submark-trial',
    version: trialFileVersion,
    createdAt: `${day}T15:00:00.000Z`,
    changedAt: `${day}T19:00:00.000Z`,
    ...trial,
    rows: plan.repeats.map(({ condition, position }) => {
      const swim = left.get(condition)?.shift();
      if (!swim) throw new Error(`no swim left for ${condition}`);
      const { depth = null, tags = [] } = swim.card;
      return { swimId: swim.id, order: position, tags: { ...noTags, depth, free: [...tags] } };
    }),
    plan: { seed, conditions: [...conditions], repeatsEach },
    invented: true,
  };
}

/** One question that the month answers, and one that it doesn't yet. */
export const monthTrials: readonly Trial[] = [
  asked({
    id: 'sample-trial-depth',
    title: 'Is Juno faster deeper down?',
    day: '2026-05-26',
    factor: { of: 'depth' },
    conditions: ['shallow', 'deep'],
    repeatsEach: 4,
    seed: 26,
    conditionOf: ({ card }) => card.depth ?? null,
    readings: [
      'speed-hip',
      'distance-per-kick',
      'kick-frequency',
      'kick-amplitude-toe',
      'trunk-pitch',
      'hip-height',
    ],
    note: 'Invented. The order was drawn by lot, push-offs alike, six kicks each.',
  }),
  asked({
    id: 'sample-trial-kick-size',
    title: 'Large kicks or quick ones for Ansel?',
    day: '2026-05-28',
    factor: { of: 'tag', tag: 'large kicks' },
    conditions: ['large kicks', 'not large kicks'],
    repeatsEach: 3,
    seed: 28,
    conditionOf: ({ card }) =>
      card.tags?.includes('large kicks')
        ? 'large kicks'
        : card.tags?.includes('quick kicks')
          ? 'not large kicks'
          : null,
    readings: ['speed-hip', 'distance-per-kick', 'kick-frequency', 'kick-amplitude-toe', 'trunk-pitch'],
    note: 'Invented. Three of each do not settle it: the page says how many more would.',
  }),
];
