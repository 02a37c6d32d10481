import { z } from 'zod';
import { type Author, lineageSchema, superseded } from '#core/host-contract/operations/lineage';
import type { KeyedText } from './keyed-journal';

/** What the window's storage must do to hold several windows' entries; the browser's localStorage does. */
export interface ListedText extends KeyedText {
  readonly length: number;
  key(at: number): string | null;
}

/** Changes of one window that are not on disk yet. */
export interface UnsavedEntry<T> {
  /** Revision on disk that the value grew from; null: there was no file. */
  readonly baseRevision: string | null;
  readonly keptAt: string;
  readonly value: T;
  readonly writer: string;
  readonly step: number;
  readonly grewFrom: readonly Author[];
}

/**
 * A second home for changes that are not on disk yet: one entry for each window that had some, replayed at the next
 * opening. It outlives a closed window, a full disk and a host that is gone; it may come back older than it was, as
 * browsers write their storage late.
 */
export interface UnsavedJournal<T> {
  /** False when the window's storage is full or forbidden; the caller must then say so. */
  keep(entry: UnsavedEntry<T>): boolean;
  /** Every window's entry, the one kept last at the end. */
  read(id: string): readonly UnsavedEntry<T>[];
  /** Drops the entries that hold nothing beyond what these authors had done. */
  forget(id: string, authors: readonly Author[]): void;
}

/** Stands for the writer of an entry of an earlier build, which named none. */
const unnamedWriter = 'unnamed';

/** `prefix` tells the kinds of document apart in the storage. */
export function createUnsavedJournal<T>(
  storage: ListedText,
  prefix: string,
  valueSchema: z.ZodType<T>,
  idOf: (value: T) => string,
): UnsavedJournal<T> {
  const schema = z.strictObject({
    baseRevision: z.string().nullable(),
    keptAt: z.iso.datetime(),
    value: valueSchema,
    writer: lineageSchema.shape.writer.default(unnamedWriter),
    step: lineageSchema.shape.step.default(0),
    grewFrom: lineageSchema.shape.grewFrom.default([]),
  });
  const parse = (text: string | null): UnsavedEntry<T> | null => {
    let raw: unknown;
    try {
      raw = JSON.parse(text ?? 'null');
    } catch {
      return null;
    }
    // earlier builds called a swim's value by its name
    const { swim, ...rest } = (raw ?? {}) as Record<string, unknown>;
    const parsed = schema.safeParse(swim === undefined ? rest : { ...rest, value: swim });
    return parsed.success ? parsed.data : null;
  };
  /** Ids have no dots: what follows one names the writer; earlier builds wrote without. */
  const keysOf = (id: string): string[] =>
    Array.from({ length: storage.length }, (_, at) => storage.key(at)).filter(
      (key): key is string => key === prefix + id || key?.startsWith(`${prefix}${id}.`) === true,
    );
  return {
    keep(entry) {
      try {
        storage.setItem(`${prefix}${idOf(entry.value)}.${entry.writer}`, JSON.stringify(entry));
        return true;
      } catch {
        return false;
      }
    },
    read: (id) =>
      keysOf(id)
        .map((key) => parse(storage.getItem(key)))
        .filter((entry) => entry !== null)
        .sort((one, other) => (one.keptAt < other.keptAt ? -1 : 1)),
    forget(id, authors) {
      for (const key of keysOf(id)) {
        const entry = parse(storage.getItem(key));
        if (entry && superseded(authors, entry)) storage.removeItem(key);
      }
    },
  };
}
