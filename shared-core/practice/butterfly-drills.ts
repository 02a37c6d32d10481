import type { Drill } from './drill-schema';
import type { StrokePattern } from './practice-schema';

const source = 'our own text; common practice, no source';

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
    name: 'Two right, two left, four both',
    arms: 'one-arm-alternating',
    pattern: even(2, 4),
    purpose: 'Place kick one with the hand on one arm, and keep the place when both arms swim.',
    how: 'Two strokes right, two left, four both: eight for a 25. The resting arm stays stretched ahead.',
    watch: [
      'Kick one goes in with the hand, on one arm as on both.',
      'As many strokes right as left.',
      'The change to both arms keeps the rhythm.',
    ],
    readings: ['stroke-count', 'kick1-top-to-entry', 'kick2-bottom-to-exit', 'stroke-rate'],
  },
  {
    ...fly,
    id: 'one-arm-three-three-three',
    name: 'Three right, three left, three both',
    arms: 'one-arm-alternating',
    pattern: even(3, 3),
    purpose: 'As two, two, four, with more time on each arm.',
    how: 'Three strokes right, three left, three both: nine for a 25.',
    watch: ['As many strokes right as left.', 'Breathe to the side on one arm, forward on both.'],
    readings: ['stroke-count', 'kick1-top-to-entry', 'kick2-bottom-to-exit', 'stroke-rate'],
  },
  {
    ...fly,
    id: 'one-arm-right-left',
    name: 'A length right, a length left',
    arms: 'one-arm-alternating',
    purpose: 'Find the weaker side, and give it as much as the other.',
    how: 'One length with the right arm only, the next with the left only; the same count on both.',
    watch: ['The count right and left: the same, or which is higher.', 'Kick two drives the hand out.'],
    readings: ['stroke-count', 'kick1-top-to-entry', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'slow-count-then-full',
    name: 'Slow at the count, then full effort at the same count',
    purpose: 'Keep the length of the stroke when the pace goes up.',
    how: 'Two or three slow repeats at the swimmer’s own count, then one at full effort at the same count. Equal push-offs, so that only the strokes decide.',
    watch: [
      'The count: the same or fewer is held.',
      'The count is held by the stroke, not by a longer push-off under water.',
      'Kick one still goes in with the hands.',
    ],
    readings: ['stroke-count', 'stroke-rate', 'stroke-length', 'kick1-top-to-entry', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'kick-in-kick-out',
    name: 'Kick in, kick out',
    purpose: 'Set both kicks: one as the hands go in, one as the hands go out.',
    how: 'Slow whole strokes; say “in” to kick one and “out” to kick two.',
    watch: [
      'Kick one starts as the hands enter.',
      'Kick two is done just before the hands leave the water.',
      'Two kicks in every stroke, the second not lost.',
    ],
    readings: ['kick1-top-to-entry', 'kick1-bottom-to-entry', 'kick2-top-to-exit', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'three-kicks-a-stroke',
    name: 'Three kicks to one stroke',
    purpose: 'Time to settle the line before the hands start back.',
    how: 'Kick one with the hands in, one more with the arms stretched, the last with the hands out. Breathe whenever air is wanted.',
    watch: ['The hands wait stretched, not sunk.', 'The last kick still meets the hands on their way out.'],
    readings: ['kick-frequency', 'head-offset', 'kick2-bottom-to-exit'],
  },
  {
    ...fly,
    id: 'strokes-with-level-head',
    name: 'Whole stroke with a level head',
    purpose: 'Keep the breath low and early, so that hips and rhythm do not drop with it.',
    how: 'Chin near the water on the breath, head in before the hands. Change between breathing and not breathing strokes as is comfortable.',
    watch: ['The head is in before the hands enter.', 'Hips as high on breathing strokes as on the others.'],
    readings: ['trunk-pitch', 'hip-height', 'head-offset', 'gap-t2', 'breathing-every'],
  },
];
