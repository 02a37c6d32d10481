import { z } from 'zod';
import { trialSchema } from '../../practice/trial-schema';
import { idSchema } from '../../swim-file/swim-schema';
import { keptProblemSchema } from './kept-problem';
import { lineageSchema, writtenSchema } from './lineage';
import { revisionSchema } from './revision';

export const trialOperations = {
  /** Every trial of the library, whole, the last changed first; files that can't be opened are told as problems. */
  'trial/list': {
    input: z.strictObject({}),
    output: z.strictObject({
      trials: z.array(z.strictObject({ trial: trialSchema, revision: revisionSchema })),
      problems: z.array(keptProblemSchema),
    }),
  },
  'trial/read': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({ trial: trialSchema, revision: revisionSchema, written: writtenSchema }),
  },
  /** `baseRevision` null makes a new file. `conflict` as for swims: the caller's version is kept beside the other. */
  'trial/write': {
    input: z.strictObject({
      trial: trialSchema,
      baseRevision: revisionSchema.nullable(),
      lineage: lineageSchema.optional(),
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
  /** Moves the file into the bin of the trials, from where `trial/restore` brings it back. The swims stay. */
  'trial/remove': { input: z.strictObject({ id: idSchema }), output: z.strictObject({}) },
  'trial/restore': { input: z.strictObject({ id: idSchema }), output: z.strictObject({}) },
} as const;
