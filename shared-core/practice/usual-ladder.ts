import type { Ladder } from './practice-schema';
import { practiceWords } from '../words/practice';

export interface UsualLadder {
  readonly id: string;
  readonly label: string;
  readonly ladder: Ladder;
  readonly source: string;
}

const trade = practiceWords('commonPracticeNo');

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
    label: practiceWords('n123StrokesRight'),
    ladder: { of: 'pattern', rungs: [1, 2, 3] },
    source: trade,
  },
  {
    id: 'pattern-down',
    label: practiceWords('n321StrokesRight'),
    ladder: { of: 'pattern', rungs: [3, 2, 1] },
    source: trade,
  },
  {
    id: 'count-plus-two-plus-four',
    label: practiceWords('countThenPlus'),
    ladder: { of: 'count', rungs: [0, 2, 4] },
    source: practiceWords('bothAdditionsRead', { trade }),
  },
];
