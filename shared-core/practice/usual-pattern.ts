import { z } from 'zod';
import type { Swimmer } from '../swim-file/squad-schema';
import { targetInForce } from '../swim-file/target-in-force';
import { type StrokePattern, strokePatternSchema } from './practice-schema';
import { patternCount, patternPasses, patternStrokes } from './stroke-pattern';
import { practiceWords } from '../words/practice';

/** A pattern offered to the coach, who may change or drop it. */
export const usualPatternSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]{1,60}$/),
  label: z.string().min(1).max(120),
  pattern: strokePatternSchema,
  /** Where the numbers come from, printed beside them. */
  source: z.string().min(1).max(200),
});
export type UsualPattern = z.infer<typeof usualPatternSchema>;

const trade = practiceWords('commonPracticeNo');

/**
 * Usual defaults, editable: 8 strokes a 25 and 16 a 50 for grown men; one more a 25, so two more a 50, for grown women.
 * Juniors need more; how many more is the coach's to say, so the third row is only a first offer.
 */
export const usualPatterns: readonly UsualPattern[] = [
  {
    id: 'grown-men',
    label: practiceWords('grownMen2Right'),
    pattern: {
      runs: [
        { arm: 'right', count: 2 },
        { arm: 'left', count: 2 },
        { arm: 'both', count: 4 },
      ],
      perMetres: 25,
    },
    source: trade,
  },
  {
    id: 'grown-women',
    label: practiceWords('grownWomen3Right'),
    pattern: {
      runs: [
        { arm: 'right', count: 3 },
        { arm: 'left', count: 3 },
        { arm: 'both', count: 3 },
      ],
      perMetres: 25,
    },
    source: trade,
  },
  {
    id: 'juniors',
    label: practiceWords('juniors4Right'),
    pattern: {
      runs: [
        { arm: 'right', count: 4 },
        { arm: 'left', count: 4 },
        { arm: 'both', count: 4 },
      ],
      perMetres: 25,
    },
    source: practiceWords('juniorsNeedMore'),
  },
];

export type PatternAgainstTarget =
  | { readonly verdict: 'meets-target' | 'below-target' | 'above-target'; readonly perLength: number }
  | { readonly verdict: 'no-target' | 'no-count' };

/**
 * Strokes per length that a pattern implies, against the swimmer's own band for the count of a length. 'below-target':
 * fewer strokes than the band, so each must carry farther. A pattern that spans several lengths (or is not whole in
 * one) gives no count.
 */
export function patternAgainstTarget(
  pattern: StrokePattern,
  poolMetres: number,
  swimmer: Pick<Swimmer, 'targets'>,
): PatternAgainstTarget {
  const perLength = patternCount(pattern, poolMetres);
  if (perLength === null) return { verdict: 'no-count' };
  const target = targetInForce(swimmer, 'stroke-count');
  if (!target) return { verdict: 'no-target' };
  if (target.low !== null && perLength < target.low) return { verdict: 'below-target', perLength };
  if (target.high !== null && perLength > target.high) return { verdict: 'above-target', perLength };
  return { verdict: 'meets-target', perLength };
}

/** Whether a pattern keeps right and left even in the distance; null when it does not come out whole there. */
export function patternIsEven(pattern: StrokePattern, metres: number): boolean | null {
  if (pattern.perMetres !== null && patternPasses(pattern, metres) === null) return null;
  const { right, left } = patternStrokes(pattern.runs);
  return right === left;
}
