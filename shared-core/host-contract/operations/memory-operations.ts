import { z } from 'zod';

/**
 * What is remembered from window to window, each under a name of its own: the look, the last card, the readings seen first,
 * whether the swimmer is kept in view, how a pair was looked at, which swims wait to be seen. No marks and no settings of a
 * library: what can't be read is as good as never kept.
 */
export const memoryKeySchema = z
  .string()
  .regex(
    /^(submark\.theme|submark\.see-queue|submark\.last-card|submark\.short-lists|submark\.keep-in-view|submark-pair-[A-Za-z0-9_-]{1,64} [A-Za-z0-9_-]{1,64})$/,
  );
/** What is kept is JSON or a word; the longest is a pair of swims, well below this. */
export const memoryTextSchema = z.string().min(1).max(20_000);

export const memoryOperations = {
  /** Everything remembered, by its name. */
  'memory/read': {
    input: z.strictObject({}),
    output: z.strictObject({ kept: z.record(memoryKeySchema, memoryTextSchema) }),
  },
  /** Remembers something under a name; null forgets it. */
  'memory/keep': {
    input: z.strictObject({ key: memoryKeySchema, text: memoryTextSchema.nullable() }),
    output: z.strictObject({}),
  },
} as const;
