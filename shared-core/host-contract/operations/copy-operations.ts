import { z } from 'zod';
import { cardSchema, idSchema } from '../../swim-file/swim-schema';
import { revisionSchema } from './revision';

/** One version of a swim that was changed in two places. */
const swimVersionSchema = z.strictObject({
  /** Name of the copy's file; null for the version on the shelf. */
  name: z.string().max(255).nullable(),
  revision: revisionSchema,
  changedAt: z.string(),
  card: cardSchema,
  eventCount: z.number().int(),
  postureCount: z.number().int(),
  followedCount: z.number().int(),
});
export type SwimVersion = z.infer<typeof swimVersionSchema>;

export const copyOperations = {
  /** The version on the shelf first, then every other kept beside it; copies that can't be opened by name alone. */
  'swim/versions': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({ versions: z.array(swimVersionSchema), unreadable: z.array(z.string()) }),
  },
  /**
   * Settles one copy: `take` it, or keep the version on the shelf. The version not taken stays as one of the swim's
   * earlier generations. `conflict` when the shelf's version is no longer `baseRevision`.
   */
  'swim/settle': {
    input: z.strictObject({
      id: idSchema,
      copy: z.string().min(1).max(255),
      take: z.enum(['copy', 'shelf']),
      baseRevision: revisionSchema,
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
} as const;
