import { z } from 'zod';
import { swimSchema } from '#core/swim-file/swim-schema';

const entrySchema = z.strictObject({
  /** Revision on disk that the kept swim grew from. */
  baseRevision: z.string(),
  keptAt: z.iso.datetime(),
  swim: swimSchema,
});
export type JournalEntry = z.infer<typeof entrySchema>;

/** What the window's own storage must do; the browser's localStorage does. */
export interface KeyedText {
  getItem(key: string): string | null;
  setItem(key: string, text: string): void;
  removeItem(key: string): void;
}

/**
 * A second home for changes that are not on disk yet: one entry a swim, replayed at the next opening. It outlives
 * a closed window, a full disk and a host that is gone.
 */
export interface SwimJournal {
  /** False when the window's storage is full or forbidden; the caller must then say so. */
  keep(entry: JournalEntry): boolean;
  read(swimId: string): JournalEntry | null;
  forget(swimId: string): void;
}

const keyOf = (swimId: string): string => `submark-unsaved-${swimId}`;

export function createSwimJournal(storage: KeyedText): SwimJournal {
  return {
    keep(entry) {
      try {
        storage.setItem(keyOf(entry.swim.id), JSON.stringify(entry));
        return true;
      } catch {
        return false;
      }
    },
    read(swimId) {
      const text = storage.getItem(keyOf(swimId));
      if (text === null) return null;
      let raw: unknown;
      try {
        raw = JSON.parse(text);
      } catch {
        raw = null;
      }
      const parsed = entrySchema.safeParse(raw);
      return parsed.success ? parsed.data : null;
    },
    forget(swimId) {
      storage.removeItem(keyOf(swimId));
    },
  };
}
