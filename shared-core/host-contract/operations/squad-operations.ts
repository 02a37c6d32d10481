import { z } from 'zod';
import { squadSchema } from '../../swim-file/squad-schema';
import { revisionSchema } from './revision';

export const squadOperations = {
  'squad/read': {
    input: z.strictObject({}),
    output: z.strictObject({ squad: squadSchema, revision: revisionSchema.nullable() }),
  },
  'squad/write': {
    input: z.strictObject({
      squad: squadSchema,
      baseRevision: revisionSchema.nullable(),
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
} as const;
