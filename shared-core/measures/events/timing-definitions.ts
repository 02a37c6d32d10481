import type { ReadingDefinition } from '../reading';
import { phaseKinds } from './phases';

const chollet =
  'Chollet, Seifert, Boulesteix, Carter 2006, Int J Sports Med 27:322–329; Seifert, Chollet, Sanders 2010, Int J Sports Med 31:167–173.';

interface GapWords {
  readonly id: string;
  readonly label: string;
  readonly brief: string;
  readonly what: string;
  readonly forCoach: string;
  readonly forSwimmer: string;
  readonly source: string;
}

const gaps: readonly GapWords[] = [
  {
    id: 'kick1-top-to-entry',
    label: 'Kick 1 with hand entry',
    brief: 'kick top 1 − entry; positive: leg later',
    what: 'from the hands’ entry to the top of kick one, where its down-kick starts',
    forCoach: 'Whether kick one starts as the hands go in: close to zero is together.',
    forSwimmer: 'Whether your first kick starts as your hands go in.',
    source: 'Kick one goes in with the hands: common practice, no source. Gap: T1 of Chollet et al. 2006.',
  },
  {
    id: 'kick1-bottom-to-entry',
    label: 'End of kick 1 after hand entry',
    brief: 'kick bottom 1 − entry; positive: leg later',
    what: 'from the hands’ entry to the bottom of kick one',
    forCoach: 'How long after the hands are in kick one is finished.',
    forSwimmer: 'How long after your hands go in your first kick is done.',
    source: 'Our own definition.',
  },
  {
    id: 'kick2-top-to-exit',
    label: 'Start of kick 2 before hand exit',
    brief: 'kick top 2 − exit; negative: leg earlier',
    what: 'from the hands’ exit to the top of kick two, where its down-kick starts',
    forCoach: 'How long before the hands leave kick two begins.',
    forSwimmer: 'How long before your hands leave the water your second kick starts.',
    source: 'Our own definition.',
  },
  {
    id: 'kick2-bottom-to-exit',
    label: 'Kick 2 with hand exit',
    brief: 'kick bottom 2 − exit; positive: leg later',
    what: 'from the hands’ exit to the bottom of kick two',
    forCoach: 'Whether kick two is finished just before the hands leave: a little below zero.',
    forSwimmer: 'Whether your second kick is done just before your hands leave the water.',
    source:
      'Kick two is finished just before the hands leave: common practice, no source. Gap: T4 of Chollet et al. 2006.',
  },
  {
    id: 'gap-t1',
    label: 'Gap T1',
    brief: 'kick top 1 − entry',
    what: 'from hand entry to the start of the first down-kick',
    forCoach: 'First of the four published gaps; near zero in elite swimmers.',
    forSwimmer: 'Hands in and first kick: together or apart.',
    source: chollet,
  },
  {
    id: 'gap-t2',
    label: 'Gap T2',
    brief: 'kick bottom 1 − catch; negative: glide',
    what: 'from the catch to the end of the first down-kick',
    forCoach:
      'Below zero, the hands wait after kick one: the glide before the pull. It shrinks as the pace rises.',
    forSwimmer: 'How long you glide between your first kick and your pull.',
    source: chollet,
  },
  {
    id: 'gap-t3',
    label: 'Gap T3',
    brief: 'kick top 2 − shoulder',
    what: 'from the hands passing under the shoulders to the start of the second down-kick',
    forCoach: 'Third of the four published gaps; near zero in elite swimmers.',
    forSwimmer: 'Hands under your shoulders and second kick: together or apart.',
    source: chollet,
  },
  {
    id: 'gap-t4',
    label: 'Gap T4',
    brief: 'kick bottom 2 − exit',
    what: 'from the hands’ exit to the end of the second down-kick',
    forCoach: 'Fourth of the four published gaps; near zero in elite swimmers.',
    forSwimmer: 'Hands out and end of the second kick: together or apart.',
    source: chollet,
  },
];

const gapDefinitions = gaps.flatMap((gap): ReadingDefinition[] => [
  {
    id: gap.id,
    group: 'timing',
    label: gap.label,
    brief: gap.brief,
    definition: `Milliseconds ${gap.what}, mean over strokes with exactly two kicks. Positive: the leg is later.`,
    forCoach: gap.forCoach,
    forSwimmer: gap.forSwimmer,
    source: gap.source,
    digits: 0,
  },
  {
    id: `${gap.id}-percent`,
    group: 'timing',
    label: `${gap.label}, share`,
    brief: `${gap.brief}, % of the stroke`,
    definition: `The same time ${gap.what}, in percent of the stroke from hand entry to next hand entry.`,
    forCoach: `${gap.forCoach} In percent it can be set beside strokes of another rate.`,
    forSwimmer: gap.forSwimmer,
    source: gap.source,
    digits: 1,
  },
]);

const total = (id: string, label: string, which: string, published: string): ReadingDefinition => ({
  id,
  group: 'timing',
  label,
  brief: '|T1| + |T2| + |T3| + |T4|, % of the stroke',
  definition: `The four gaps in percent of the stroke, each averaged over ${which}; then the sum of their sizes, less what marking error adds to gaps near zero. Summing sizes is our convention.`,
  forCoach: `How far arms and legs are from meeting, all four gaps together.${published} Compare only like with like.`,
  forSwimmer: 'How closely your arms and legs work together over a whole stroke.',
  source: `${chollet} Convention of the sum: ours.`,
  digits: 1,
});

const elite = ' Elite swimmers: 23.3 % when breathing, 19 % when not (Seifert et al. 2010).';

const phaseWords: Readonly<Record<string, readonly [string, string]>> = {
  'phase-entry-catch': [
    'How long the hands stretch before they press.',
    'How long you reach before you pull.',
  ],
  'phase-pull': ['How long the hands take to come under the shoulders.', 'How long your pull takes.'],
  'phase-push': ['How long the hands press on to the exit.', 'How long your push takes.'],
  'phase-recovery': ['How long the arms travel over the water.', 'How long your arms fly over the water.'],
};

const endWords = {
  entry: 'hand entry',
  catch: 'catch',
  shoulder: 'hands under the shoulders',
  exit: 'hand exit',
  next: 'the next hand entry',
};

const phaseDefinitions = phaseKinds.map((phase): ReadingDefinition => {
  const [forCoach = '', forSwimmer = ''] = phaseWords[phase.id] ?? [];
  return {
    id: phase.id,
    group: 'timing',
    label: `Phase: ${phase.label.toLowerCase()}`,
    brief: '% of the stroke',
    definition: `Time from ${endWords[phase.from]} to ${endWords[phase.to]}, in percent of the stroke. The four phases sum to 100.`,
    forCoach,
    forSwimmer,
    source: chollet,
    digits: 1,
  };
});

/** The four published gaps of breathing strokes and of others: only like is compared with like. */
const splitDefinitions = gaps
  .filter((gap) => gap.id.startsWith('gap-'))
  .flatMap((gap) =>
    (
      [
        ['breathing', 'breathing strokes'],
        ['not-breathing', 'strokes without a breath'],
      ] as const
    ).flatMap(([split, which]): ReadingDefinition[] => {
      const label = `${gap.label}, ${split === 'breathing' ? 'breathing' : 'not breathing'}`;
      const common = {
        group: 'timing' as const,
        forCoach: `${gap.forCoach} Of ${which} only: a breath changes the timing.`,
        forSwimmer: gap.forSwimmer,
        source: gap.source,
      };
      const over = `mean over ${which} with exactly two kicks`;
      return [
        {
          ...common,
          id: `${gap.id}-${split}`,
          label,
          brief: gap.brief,
          definition: `Milliseconds ${gap.what}, ${over}. Positive: the leg is later.`,
          digits: 0,
        },
        {
          ...common,
          id: `${gap.id}-${split}-percent`,
          label: `${label}, share`,
          brief: `${gap.brief}, % of the stroke`,
          definition: `The time ${gap.what}, in percent of the stroke, ${over}.`,
          digits: 1,
        },
      ];
    }),
  );

export const timingDefinitions: readonly ReadingDefinition[] = [
  ...gapDefinitions,
  ...splitDefinitions,
  total('gap-total-percent', 'Total gap', 'strokes with two kicks and all marks', ''),
  total('gap-total-breathing-percent', 'Total gap, breathing', 'breathing strokes', elite),
  total('gap-total-not-breathing-percent', 'Total gap, not breathing', 'strokes without a breath', elite),
  ...phaseDefinitions,
];
