import type { ComputedReading, Interval } from './reading';

/** The interval that answers a question, or the reading's own where it can't answer it. */
export function chosenInterval(
  reading: Pick<ComputedReading, 'interval' | 'otherInterval'>,
  question: Interval['question'],
): Interval {
  const { interval, otherInterval } = reading;
  return otherInterval?.question === question ? otherInterval : interval;
}
