import type { Ladder } from './practice-schema';

export interface UsualLadder {
  readonly id: string;
  readonly label: string;
  readonly ladder: Ladder;
  readonly source: string;
}

const trade = 'common practice, no source';

/** Ladders offered to the coach, who may change every rung. */
export const usualLadders: readonly UsualLadder[] = [
  {
    id: 'up-by-25',
    label: '1-2-3: 25, 50, 75',
    ladder: { of: 'lengths', rungs: [1, 2, 3], stepMetres: 25 },
    source: trade,
  },
  {
    id: 'down-by-25',
    label: '3-2-1: 75, 50, 25',
    ladder: { of: 'lengths', rungs: [3, 2, 1], stepMetres: 25 },
    source: trade,
  },
  {
    id: 'pattern-up',
    label: '1-2-3 strokes right, left, both',
    ladder: { of: 'pattern', rungs: [1, 2, 3] },
    source: trade,
  },
  {
    id: 'pattern-down',
    label: '3-2-1 strokes right, left, both',
    ladder: { of: 'pattern', rungs: [3, 2, 1] },
    source: trade,
  },
  {
    id: 'count-plus-two-plus-four',
    label: 'The count, then plus two, then plus four',
    ladder: { of: 'count', rungs: [0, 2, 4] },
    source: `${trade}; both additions are read against the first count (our convention)`,
  },
];
