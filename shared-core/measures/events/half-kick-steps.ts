import type { TimedEvent } from '../timed-event';

/**
 * Two tops with no bottom between, or two bottoms with no top between, nearer than this share of a kick can't both be right:
 * with a mark missing between they would be a whole kick apart. Our default.
 */
const tooNear = 0.75;

/**
 * Marks that would have the feet high twice without being low between, as where the two ends of a kick were exchanged. From
 * one such clash to the next, marks are right and exchanged by turns: those are taken to be exchanged that are fewer, and all
 * where both are as many.
 *
 * @param marks tops and bottoms by time
 * @param kick seconds of a whole kick
 */
export function outOfStep(marks: readonly TimedEvent[], kick: number): readonly TimedEvent[] {
  const turns: [TimedEvent[], TimedEvent[]] = [[], []];
  let turn: 0 | 1 = 0;
  let last: TimedEvent | null = null;
  for (const mark of marks) {
    if (last?.event.kind === mark.event.kind && mark.time - last.time < tooNear * kick)
      turn = turn === 0 ? 1 : 0;
    turns[turn].push(mark);
    last = mark;
  }
  const [a, b] = turns;
  if (b.length === 0) return [];
  return a.length < b.length ? a : a.length > b.length ? b : marks;
}
