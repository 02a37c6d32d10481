import type { ReadingDefinition } from '../reading';
import { phaseKinds } from './phases';
import { timingReadingsWords } from '../../words/timing-readings';

const chollet = timingReadingsWords('cholletSeifertBoulesteix');

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
    label: timingReadingsWords('kick1HandEntry'),
    brief: timingReadingsWords('kickTop1Entry'),
    what: timingReadingsWords('fromHandsEntry'),
    forCoach: timingReadingsWords('whetherKickOne'),
    forSwimmer: timingReadingsWords('whetherYourFirst'),
    source: timingReadingsWords('kickOneGoesHands'),
  },
  {
    id: 'kick1-bottom-to-entry',
    label: timingReadingsWords('endKick1After'),
    brief: timingReadingsWords('kickBottom1Entry'),
    what: timingReadingsWords('fromHandsEntryBottom'),
    forCoach: timingReadingsWords('howLongAfter'),
    forSwimmer: timingReadingsWords('howLongAfterYour'),
    source: timingReadingsWords('ourOwnDefinition'),
  },
  {
    id: 'kick2-top-to-exit',
    label: timingReadingsWords('startKick2Before'),
    brief: timingReadingsWords('kickTop2Exit'),
    what: timingReadingsWords('fromHandsExit'),
    forCoach: timingReadingsWords('howLongBefore'),
    forSwimmer: timingReadingsWords('howLongBeforeYour'),
    source: timingReadingsWords('ourOwnDefinition'),
  },
  {
    id: 'kick2-bottom-to-exit',
    label: timingReadingsWords('kick2HandExit'),
    brief: timingReadingsWords('kickBottom2Exit'),
    what: timingReadingsWords('fromHandsExitBottom'),
    forCoach: timingReadingsWords('whetherKickTwo'),
    forSwimmer: timingReadingsWords('whetherYourSecond'),
    source: timingReadingsWords('kickTwoFinished'),
  },
  {
    id: 'gap-t1',
    label: timingReadingsWords('gapT1'),
    brief: timingReadingsWords('kickTop1Entry2'),
    what: timingReadingsWords('fromHandEntry'),
    forCoach: timingReadingsWords('firstFourPublished'),
    forSwimmer: timingReadingsWords('handsFirstKick'),
    source: chollet,
  },
  {
    id: 'gap-t2',
    label: timingReadingsWords('gapT2'),
    brief: timingReadingsWords('kickBottom1Catch'),
    what: timingReadingsWords('fromCatchEnd'),
    forCoach: timingReadingsWords('belowZeroHands'),
    forSwimmer: timingReadingsWords('howLongYouGlide'),
    source: chollet,
  },
  {
    id: 'gap-t3',
    label: timingReadingsWords('gapT3'),
    brief: timingReadingsWords('kickTop2Shoulder'),
    what: timingReadingsWords('fromHandsPassing'),
    forCoach: timingReadingsWords('thirdFourPublished'),
    forSwimmer: timingReadingsWords('handsUnderYour'),
    source: chollet,
  },
  {
    id: 'gap-t4',
    label: timingReadingsWords('gapT4'),
    brief: timingReadingsWords('kickBottom2Exit2'),
    what: timingReadingsWords('fromHandsExitEnd'),
    forCoach: timingReadingsWords('fourthFourPublished'),
    forSwimmer: timingReadingsWords('handsOutEndSecond'),
    source: chollet,
  },
];

const gapDefinitions = gaps.flatMap((gap): ReadingDefinition[] => [
  {
    id: gap.id,
    group: 'timing',
    label: gap.label,
    brief: gap.brief,
    definition: timingReadingsWords('millisecondsMeanOver', { what: gap.what }),
    forCoach: gap.forCoach,
    forSwimmer: gap.forSwimmer,
    source: gap.source,
    digits: 0,
  },
  {
    id: `${gap.id}-percent`,
    group: 'timing',
    label: timingReadingsWords('share', { label: gap.label }),
    brief: timingReadingsWords('stroke', { brief: gap.brief }),
    definition: timingReadingsWords('sameTimePercent', { what: gap.what }),
    forCoach: timingReadingsWords('percentCanSet', { forCoach: gap.forCoach }),
    forSwimmer: gap.forSwimmer,
    source: gap.source,
    digits: 1,
  },
]);

const total = (id: string, label: string, which: string, published: string): ReadingDefinition => ({
  id,
  group: 'timing',
  label,
  brief: timingReadingsWords('t1T2T3T4Stroke'),
  definition: timingReadingsWords('fourGapsPercent', { which }),
  forCoach: timingReadingsWords('howFarArmsLegs', { published }),
  forSwimmer: timingReadingsWords('howCloselyYour'),
  source: timingReadingsWords('conventionSumOurs', { chollet }),
  digits: 1,
});

const elite = ` ${timingReadingsWords('eliteSwimmers23')}`;

const phaseWords: Readonly<Record<string, readonly [string, string]>> = {
  'phase-entry-catch': [timingReadingsWords('howLongHands'), timingReadingsWords('howLongYouReach')],
  'phase-pull': [timingReadingsWords('howLongHandsTake'), timingReadingsWords('howLongYourPull')],
  'phase-push': [timingReadingsWords('howLongHandsPress'), timingReadingsWords('howLongYourPush')],
  'phase-recovery': [timingReadingsWords('howLongArmsTravel'), timingReadingsWords('howLongYourArms')],
};

const endWords = {
  entry: timingReadingsWords('handEntry'),
  catch: 'catch',
  shoulder: timingReadingsWords('handsUnderShoulders'),
  exit: timingReadingsWords('handExit'),
  next: timingReadingsWords('nextHandEntry'),
};

const phaseDefinitions = phaseKinds.map((phase): ReadingDefinition => {
  const [forCoach = '', forSwimmer = ''] = phaseWords[phase.id] ?? [];
  return {
    id: phase.id,
    group: 'timing',
    label: timingReadingsWords('phase', { label: phase.label.toLowerCase() }),
    brief: timingReadingsWords('stroke2'),
    definition: timingReadingsWords('timeFromPercent', {
      end: endWords[phase.from],
      end2: endWords[phase.to],
    }),
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
        ['breathing', timingReadingsWords('breathingStrokes')],
        ['not-breathing', timingReadingsWords('strokesWithoutBreath')],
      ] as const
    ).flatMap(([split, which]): ReadingDefinition[] => {
      const label = `${gap.label}, ${split === 'breathing' ? 'breathing' : timingReadingsWords('notBreathing')}`;
      const common = {
        group: 'timing' as const,
        forCoach: timingReadingsWords('onlyBreathChanges', { forCoach: gap.forCoach, which }),
        forSwimmer: gap.forSwimmer,
        source: gap.source,
      };
      const over = timingReadingsWords('meanOverExactly', { which });
      return [
        {
          ...common,
          id: `${gap.id}-${split}`,
          label,
          brief: gap.brief,
          definition: timingReadingsWords('millisecondsPositiveLeg', { what: gap.what, over }),
          digits: 0,
        },
        {
          ...common,
          id: `${gap.id}-${split}-percent`,
          label: timingReadingsWords('share', { label }),
          brief: timingReadingsWords('stroke', { brief: gap.brief }),
          definition: timingReadingsWords('timePercentStroke', { what: gap.what, over }),
          digits: 1,
        },
      ];
    }),
  );

export const timingDefinitions: readonly ReadingDefinition[] = [
  ...gapDefinitions,
  ...splitDefinitions,
  total('gap-total-percent', timingReadingsWords('totalGap'), timingReadingsWords('strokesTwoKicks'), ''),
  total(
    'gap-total-breathing-percent',
    timingReadingsWords('totalGapBreathing'),
    timingReadingsWords('breathingStrokes'),
    elite,
  ),
  total(
    'gap-total-not-breathing-percent',
    timingReadingsWords('totalGapNotBreathing'),
    timingReadingsWords('strokesWithoutBreath'),
    elite,
  ),
  ...phaseDefinitions,
];
