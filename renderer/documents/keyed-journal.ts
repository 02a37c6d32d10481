import type { z } from 'zod';

/** What the window's own storage must do; the browser's localStorage does. */
export interface KeyedText {
  getItem(key: string): string | null;
  setItem(key: string, text: string): void;
  removeItem(key: string): void;
}

/**
 * A second home for changes that are not on disk yet: one entry a document, replayed at the next opening. It outlives
 * a closed window, a full disk and a host that is gone.
 */
export interface KeyedJournal<Entry> {
  /** False when the window's storage is full or forbidden; the caller must then say so. */
  keep(entry: Entry): boolean;
  read(id: string): Entry | null;
  forget(id: string): void;
}

/** `prefix` tells the kinds of document apart in the storage. */
export function createKeyedJournal<Entry>(
  storage: KeyedText,
  prefix: string,
  schema: z.ZodType<Entry>,
  idOf: (entry: Entry) => string,
): KeyedJournal<Entry> {
  return {
    keep(entry) {
      try {
        storage.setItem(prefix + idOf(entry), JSON.stringify(entry));
        return true;
      } catch {
        return false;
      }
    },
    read(id) {
      const text = storage.getItem(prefix + id);
      if (text === null) return null;
      let raw: unknown;
      try {
        raw = JSON.parse(text);
      } catch {
        raw = null;
      }
      const parsed = schema.safeParse(raw);
      return parsed.success ? parsed.data : null;
    },
    forget(id) {
      storage.removeItem(prefix + id);
    },
  };
}
