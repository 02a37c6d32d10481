import type { Drill } from './drill-schema';
import type { StrokePattern } from './practice-schema';
import { drillsWords } from '../words/drills';

const source = drillsWords('ourOwnTextCommon');

const fly = {
  stroke: 'butterfly',
  sideUp: 'front',
  arms: 'stroking',
  aids: [],
  underwater: false,
  pattern: null,
  cautions: [],
  source,
} as const satisfies Partial<Drill>;

const even = (oneArm: number, both: number): StrokePattern => ({
  runs: [
    { arm: 'right', count: oneArm },
    { arm: 'left', count: oneArm },
    { arm: 'both', count: both },
  ],
  perMetres: 25,
});

/** Butterfly drills, in our own words. */
export const butterflyDrills: readonly Drill[] = [
  {
    ...fly,
    id: 'one-arm-two-two-four',
    name: drillsWords('twoRightTwoLeft'),
    arms: 'one-arm-alternating',
    pattern: even(2, 4),
    purpose: drillsWords('placeKickOne'),
    how: drillsWords('twoStrokesRight'),
    watch: [drillsWords('kickOneGoesHand'), drillsWords('manyStrokesRight'), drillsWords('changeBothArms')],
    readings: ['stroke-count', 'kick1-top-to-entry', 'kick2-bottom-to-exit', 'stroke-rate'],
  },
  {
    ...fly,
    id: 'one-arm-three-three-three',
    name: drillsWords('threeRightThree'),
    arms: 'one-arm-alternating',
    pattern: even(3, 3),
    purpose: drillsWords('twoTwoFourMore'),
    how: drillsWords('threeStrokesRight'),
    watch: [drillsWords('manyStrokesRight'), drillsWords('breatheSideOne')],
    readings: ['stroke-count', 'kick1-top-to-entry', 'kick2-bottom-to-exit', 'stroke-rate'],
  },
  {
    ...fly,
    id: 'one-arm-right-left',
    name: drillsWords('lengthRightLength'),
    arms: 'one-arm-alternating',
    purpose: drillsWords('findWeakerSide'),
    how: drillsWords('oneLengthRight'),
    watch: [drillsWords('countRightLeft'), drillsWords('kickTwoDrives')],
    readings: ['stroke-count', 'kick1-top-to-entry', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'slow-count-then-full',
    name: drillsWords('slowAtCountThen'),
    purpose: drillsWords('keepLengthStroke'),
    how: drillsWords('twoOrThreeSlow'),
    watch: [drillsWords('countSameOrFewer'), drillsWords('countHeldStroke'), drillsWords('kickOneStill')],
    readings: ['stroke-count', 'stroke-rate', 'stroke-length', 'kick1-top-to-entry', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'kick-in-kick-out',
    name: drillsWords('kickKickOut'),
    purpose: drillsWords('setBothKicks'),
    how: drillsWords('slowWholeStrokes'),
    watch: [drillsWords('kickOneStarts'), drillsWords('kickTwoDoneJust'), drillsWords('twoKicksEvery')],
    readings: ['kick1-top-to-entry', 'kick1-bottom-to-entry', 'kick2-top-to-exit', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'three-kicks-a-stroke',
    name: drillsWords('threeKicksOne'),
    purpose: drillsWords('timeSettleLine'),
    how: drillsWords('kickOneHands'),
    watch: [drillsWords('handsWaitStretched'), drillsWords('lastKickStill')],
    readings: ['kick-frequency', 'head-offset', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'strokes-with-level-head',
    name: drillsWords('wholeStrokeLevel'),
    purpose: drillsWords('keepBreathLow'),
    how: drillsWords('chinNearWater'),
    watch: [drillsWords('headBeforeHands'), drillsWords('hipsHighBreathing')],
    readings: ['trunk-pitch', 'hip-height', 'head-offset', 'gap-t2', 'breathing-every'],
  },
];
