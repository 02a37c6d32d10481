import { z } from 'zod';
import { swimSchema } from '#core/swim-file/swim-schema';
import { createKeyedJournal, type KeyedJournal, type KeyedText } from './keyed-journal';

const entrySchema = z.strictObject({
  /** Revision on disk that the kept swim grew from. */
  baseRevision: z.string(),
  keptAt: z.iso.datetime(),
  swim: swimSchema,
});
export type JournalEntry = z.infer<typeof entrySchema>;

/** Changes of swims that are not on disk yet. */
export type SwimJournal = KeyedJournal<JournalEntry>;

export function createSwimJournal(storage: KeyedText): SwimJournal {
  return createKeyedJournal(storage, 'submark-unsaved-', entrySchema, (entry) => entry.swim.id);
}
