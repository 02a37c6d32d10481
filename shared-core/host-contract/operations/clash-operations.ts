import { z } from 'zod';
import { idSchema } from '../../swim-file/swim-schema';
import { revisionSchema } from './revision';

/** Documents of a library beside its swims that can be changed in two places at once. */
const clashKinds = ['squad', 'coach', 'drills', 'practice', 'trial'] as const;
export type ClashKind = (typeof clashKinds)[number];

/** One version of such a document. */
const documentVersionSchema = z.strictObject({
  /** Name of the copy's file; null for the version in use. */
  name: z.string().max(255).nullable(),
  revision: revisionSchema,
  /** What the coach calls it, and the day it is of; empty where the document has no such thing. */
  title: z.string(),
  day: z.string(),
  /** ISO instant the document says it was changed at; the file's own time where it says none. */
  changedAt: z.string(),
  /** How much is in it, by the names of its lists: swimmers, items, log, rows, drills … */
  holds: z.record(z.string(), z.number().int()),
});
export type DocumentVersion = z.infer<typeof documentVersionSchema>;

const clashSchema = z.strictObject({
  kind: z.enum(clashKinds),
  /** Of a practice or a trial; null for those of which a library has one. */
  id: idSchema.nullable(),
  /** Null when it was removed here while it was changed elsewhere. */
  inUse: documentVersionSchema.nullable(),
  /** Each with the fields it says otherwise than the version in use. */
  copies: z.array(documentVersionSchema.extend({ differs: z.array(z.string()) })),
});
export type Clash = z.infer<typeof clashSchema>;

export const clashOperations = {
  /** Every document of which more than one version was kept; copies that can't be opened by name alone. */
  'clashes/list': {
    input: z.strictObject({}),
    output: z.strictObject({ clashes: z.array(clashSchema), unreadable: z.array(z.string()) }),
  },
  /**
   * Settles one copy: `take` it, or keep the version in use. The version not taken stays among the document's earlier
   * generations. `conflict` when the version in use is no longer `baseRevision` (null: there is none).
   */
  'clashes/settle': {
    input: z.strictObject({
      kind: z.enum(clashKinds),
      id: idSchema.nullable(),
      copy: z.string().min(1).max(255),
      take: z.enum(['copy', 'in-use']),
      baseRevision: revisionSchema.nullable(),
    }),
    output: z.strictObject({ revision: revisionSchema.nullable() }),
  },
} as const;
