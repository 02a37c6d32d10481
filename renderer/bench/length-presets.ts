import { type PoolMark, poolMarkById } from '#core/scene/pool-marks';

/** A length the coach may find in the picture, with where its metres come from. */
export interface LengthPreset {
  readonly id: string;
  readonly words: string;
  readonly metres: number;
  readonly source: string;
  readonly caution: string | null;
}

/** Off-plane error of a lane rope 1.25 m nearer than the swimmer at 5 m: 5 / 3.75 − 1. */
const rope =
  'The lane rope is not in the swimmer’s plane: a rope 1.25 m nearer than a swimmer 5 m away makes speeds read 33 % wrong. Use something under or beside the swimmer instead.';

/** The few pool marks worth a button, in the words that fit on one; all else about them is the core's. */
const chosen: readonly (readonly [id: string, words: string, caution: string | null])[] = [
  ['floor-line-50', 'Floor line, 50 m pool', null],
  ['floor-line-25', 'Floor line, 25 m pool', null],
  ['floor-cross-line', 'Floor cross line', null],
  [
    'lane-width',
    'Lane width',
    'A lane’s width lies across the swim: use it only in a view from below or above.',
  ],
  ['red-floats', 'Red floats', rope],
];

function known(id: string): PoolMark {
  const mark = poolMarkById(id);
  if (!mark) throw new Error(`no pool mark ${id}`);
  return mark;
}

export const lengthPresets: readonly LengthPreset[] = chosen.map(([id, words, caution]) => {
  const { metres, source } = known(id);
  return { id, words: `${words}: ${metres} m`, metres, source, caution };
});
