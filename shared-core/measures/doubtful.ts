import type { ComputedReading } from './reading';
import { doubtWords } from './doubt-words';
import { noteWords } from './reason-words';

/** What of a reading tells whether it is doubtful. */
export type Doubted = Pick<ComputedReading, 'notes' | 'doubts'>;

/** For numbers that cannot be doubtful, such as how far single values lie about their mean. */
export const undoubted: Doubted = { notes: [], doubts: [] };

/** Everything that speaks against a reading although it is computed, in words; none where nothing does. */
export function doubtsInWords({ notes, doubts }: Doubted): readonly string[] {
  return [
    ...(notes.includes('implausible-for-a-human') ? [noteWords('implausible-for-a-human')] : []),
    ...doubts.map(doubtWords),
  ];
}

/**
 * The one rule of doubt: such a number is never printed without saying so, on screen or in anything that is saved.
 */
export const isDoubtful = (reading: Doubted): boolean => doubtsInWords(reading).length > 0;

/** What stands on two readings, as a difference does, is as doubtful as either. */
export const doubtOfBoth = (a: Doubted, b: Doubted): Doubted => ({
  notes: [...a.notes, ...b.notes],
  doubts: [...a.doubts, ...b.doubts],
});
