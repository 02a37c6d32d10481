import { z } from 'zod';
import { coachSchema } from '../../swim-file/coach-file';
import { revisionSchema } from './revision';

export const coachOperations = {
  'coach/read': {
    input: z.strictObject({}),
    output: z.strictObject({
      coach: coachSchema,
      revision: revisionSchema.nullable(),
      /** The file could not be read: what it held is kept under this name beside it, and `coach` is empty. */
      setAside: z.string().nullable(),
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
