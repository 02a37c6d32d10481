import { z } from 'zod';
import { drillBookSchema } from '../../practice/drill-file';
import { practiceSchema } from '../../practice/practice-schema';
import { idSchema } from '../../swim-file/swim-schema';
import { keptProblemSchema } from './kept-problem';
import { lineageSchema, writtenSchema } from './lineage';
import { revisionSchema } from './revision';

export const practiceOperations = {
  /** Every practice of the library, whole, the latest day first; files that can't be opened are told as problems. */
  'practice/list': {
    input: z.strictObject({}),
    output: z.strictObject({
      practices: z.array(z.strictObject({ practice: practiceSchema, revision: revisionSchema })),
      problems: z.array(keptProblemSchema),
    }),
  },
  'practice/read': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({ practice: practiceSchema, revision: revisionSchema, written: writtenSchema }),
  },
  /** `baseRevision` null makes a new file. `conflict` as for swims: the caller's version is kept beside the other. */
  'practice/write': {
    input: z.strictObject({
      practice: practiceSchema,
      baseRevision: revisionSchema.nullable(),
      lineage: lineageSchema.optional(),
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
  /** Moves the file into the bin of the practices, from where `practice/restore` brings it back. */
  'practice/remove': { input: z.strictObject({ id: idSchema }), output: z.strictObject({}) },
  'practice/restore': { input: z.strictObject({ id: idSchema }), output: z.strictObject({}) },
  /** The coach's own drills and patterns; the usual ones, and no revision, until something of them was changed. */
  'drills/read': {
    input: z.strictObject({}),
    output: z.strictObject({ book: drillBookSchema, revision: revisionSchema.nullable() }),
  },
  'drills/write': {
    input: z.strictObject({ book: drillBookSchema, baseRevision: revisionSchema.nullable() }),
    output: z.strictObject({ revision: revisionSchema }),
  },
} as const;
