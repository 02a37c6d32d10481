import { z } from 'zod';
import { coachSchema } from '../../swim-file/coach-file';
import { revisionSchema } from './revision';

export const coachOperations = {
  'coach/read': {
    input: z.strictObject({}),
    output: z.strictObject({
      coach: coachSchema,
      revision: revisionSchema.nullable(),
    }),
  },
  'coach/write': {
    input: z.strictObject({
      coach: coachSchema,
      baseRevision: revisionSchema.nullable(),
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
} as const;
