import type { ComputedReading } from './reading';
import { doubtWords } from './doubt-words';
import { noteWords } from './reason-words';

/** What of a reading tells whether it is doubtful. */
export type Doubted = Pick<ComputedReading, 'notes' | 'doubts'>;

/** For numbers that cannot be doubtful, such as how far single values lie about their mean. */
export const undoubted: Doubted = { notes: [], doubts: [] };

/** Notes that speak against a reading by themselves. */
const doubtfulNotes = ['implausible-for-a-human', 'not-reviewed'] as const;

/** Everything that speaks against a reading although it is computed, in words; none where nothing does. */
export function doubtsInWords({ notes, doubts }: Doubted): readonly string[] {
  return [...doubtfulNotes.filter((note) => notes.includes(note)).map(noteWords), ...doubts.map(doubtWords)];
}

/**
 * The one rule of doubt: such a number is never printed without saying so, on screen or in anything that is saved.
 */
export const isDoubtful = (reading: Doubted): boolean => doubtsInWords(reading).length > 0;

/** The word beside the number: that nobody reviewed it where nothing else is the matter. Empty of no doubt. */
export function doubtWord(reading: Doubted): '' | 'doubtful' | 'not reviewed' {
  const doubts = doubtsInWords(reading).length;
  if (doubts === 0) return '';
  return doubts === 1 && reading.notes.includes('not-reviewed') ? 'not reviewed' : 'doubtful';
}

/** What stands on two readings, as a difference does, is as doubtful as either. */
export const doubtOfBoth = (a: Doubted, b: Doubted): Doubted => ({
  notes: [...a.notes, ...b.notes],
  doubts: [...a.doubts, ...b.doubts],
});
