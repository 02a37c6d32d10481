import { z } from 'zod';
import { handoutSchema } from '../../handout/handout-file';
import { idSchema } from '../../swim-file/swim-schema';
import { lineageSchema, writtenSchema } from './lineage';
import { revisionSchema } from './revision';

export const handoutOperations = {
  /** What the coach chose for a swim's handout; null when nothing was chosen yet. */
  'handout/read': {
    input: z.strictObject({ swimId: idSchema }),
    output: z.strictObject({
      handout: handoutSchema.nullable(),
      revision: revisionSchema.nullable(),
      written: writtenSchema,
    }),
  },
  /** Atomic, beside the swim. `conflict` when the file on disk is not `baseRevision` (null: not there yet). */
  'handout/write': {
    input: z.strictObject({
      handout: handoutSchema,
      baseRevision: revisionSchema.nullable(),
      lineage: lineageSchema.optional(),
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
} as const;
