import { type Swim, swimSchema } from '#core/swim-file/swim-schema';
import { createUnsavedJournal, type ListedText, type UnsavedJournal } from '../documents/unsaved-journal';

/** Changes of swims that are not on disk yet. */
export type SwimJournal = UnsavedJournal<Swim>;

export function createSwimJournal(storage: ListedText): SwimJournal {
  return createUnsavedJournal(storage, 'submark-unsaved-', swimSchema, (swim) => swim.id);
}
