import type { Ladder, PracticeItem, StrokePattern } from './practice-schema';
import { patternCount } from './stroke-pattern';

/** One repeat as it is to be swum. */
export interface PlannedRepeat {
  /** Place among the item's repeats, from 0; log entries name it. */
  readonly repeat: number;
  readonly distanceMetres: number;
  /** Strokes to hold: the item's own target, else what the pattern implies; null when neither says. */
  readonly count: number | null;
  readonly pattern: StrokePattern | null;
  /** Kick to swim before the next repeat; 0 after the last. */
  readonly kickMetresAfter: number;
}

/** Metres a pattern is usually swum in when a ladder of patterns has none of its own: one 25. */
const usualPatternMetres = 25;

/** The item's repeats in order, ladders unfolded; `repeats` is times through the ladder. Never empty. */
export function unfoldItem(item: PracticeItem): readonly PlannedRepeat[] {
  const round = item.ladder ? rungs(item, item.ladder) : [rung(item, item.distanceMetres, item.pattern)];
  const all = Array.from({ length: item.repeats }, () => round).flat();
  return all.map((each, repeat) => ({
    ...each,
    repeat,
    kickMetresAfter: repeat < all.length - 1 ? (item.kickBetween?.metres ?? 0) : 0,
  }));
}

type Rung = Pick<PlannedRepeat, 'distanceMetres' | 'count' | 'pattern'>;

function rungs(item: PracticeItem, ladder: Ladder): readonly Rung[] {
  switch (ladder.of) {
    case 'lengths':
      return ladder.rungs.map((n) => rung(item, n * ladder.stepMetres, item.pattern));
    case 'pattern':
      return ladder.rungs.map((n) =>
        rung({ ...item, targetCount: null }, item.distanceMetres, {
          runs: [
            { arm: 'right', count: n },
            { arm: 'left', count: n },
            { arm: 'both', count: n },
          ],
          perMetres: item.pattern ? item.pattern.perMetres : usualPatternMetres,
        }),
      );
    case 'count':
      return ladder.rungs.map((n) => ({
        distanceMetres: item.distanceMetres,
        pattern: item.pattern,
        count: item.targetCount === null ? null : item.targetCount + n,
      }));
  }
}

function rung(item: PracticeItem, distanceMetres: number, pattern: StrokePattern | null): Rung {
  // the target is for one repeat of the item's own distance; a longer rung has only the pattern's count
  const target = distanceMetres === item.distanceMetres ? item.targetCount : null;
  return {
    distanceMetres,
    pattern,
    count: target ?? (pattern ? patternCount(pattern, distanceMetres) : null),
  };
}
