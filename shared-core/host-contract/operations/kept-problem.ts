import { z } from 'zod';

/** A file of the library that can't be opened as it is; `recovered` in the detail: an earlier good copy stands in. */
export const keptProblemSchema = z.strictObject({
  name: z.string(),
  code: z.enum(['file-damaged', 'file-newer-version', 'cannot-read']),
  detail: z.record(z.string(), z.union([z.string(), z.number()])),
});
export type KeptProblem = z.infer<typeof keptProblemSchema>;
