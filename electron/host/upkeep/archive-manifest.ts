import { z } from 'zod';

export const manifestName = 'submark-manifest.json';

/** Last entry of a back-up archive: what is in it, so that it can be checked without the library. */
export const manifestSchema = z.strictObject({
  format: z.literal('submark-archive'),
  version: z.literal(1),
  createdAt: z.iso.datetime(),
  files: z.array(
    z.strictObject({
      path: z.string().min(1).max(4096),
      bytes: z.number().int().nonnegative(),
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
    }),
  ),
  /** Clips that were left outside the library and are not in the archive. */
  outside: z.array(z.string()),
});
export type Manifest = z.infer<typeof manifestSchema>;
