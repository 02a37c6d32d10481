/** A length the coach may find in the picture, with where its metres come from. */
export interface LengthPreset {
  readonly id: string;
  readonly words: string;
  readonly metres: number;
  readonly source: string;
  readonly caution: string | null;
}

const rules =
  'World Aquatics facilities rules (clause numbers differ by edition); training pools often differ';
/** Off-plane error of a lane rope 1.25 m nearer than the swimmer at 5 m: 5 / 3.75 − 1. */
const rope =
  'The lane rope is not in the swimmer’s plane: a rope 1.25 m nearer than a swimmer 5 m away makes speeds read 33 % wrong. Use something under or beside the swimmer instead.';

export const lengthPresets: readonly LengthPreset[] = [
  { id: 'floor-line-46', words: 'Floor line, 50 m pool: 46 m', metres: 46, source: rules, caution: null },
  { id: 'floor-line-21', words: 'Floor line, 25 m pool: 21 m', metres: 21, source: rules, caution: null },
  { id: 'floor-cross', words: 'Floor cross line: 1 m', metres: 1, source: rules, caution: null },
  {
    id: 'lane-width',
    words: 'Lane width: 2.5 m',
    metres: 2.5,
    source: rules,
    caution: 'A lane’s width lies across the swim: use it only in a view from below or above.',
  },
  { id: 'red-floats', words: 'Red floats: 5 m', metres: 5, source: rules, caution: rope },
];
