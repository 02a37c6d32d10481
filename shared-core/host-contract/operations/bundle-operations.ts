import { z } from 'zod';
import { cardSchema, idSchema } from '../../swim-file/swim-schema';
import { startedJobSchema } from './job-operations';

/** What the job of `bundle/make` ends with. */
export const bundleMadeSchema = z.strictObject({ name: z.string(), path: z.string() });

/** A bundle that has arrived and was checked whole; nothing of it is on the shelf yet. */
export const arrivedBundleSchema = z.strictObject({
  bundleId: idSchema,
  swimId: idSchema,
  card: cardSchema,
  clipName: z.string(),
  bytes: z.number().int().nonnegative(),
  eventCount: z.number().int(),
  postureCount: z.number().int(),
  changedAt: z.string(),
  /** The swim of that id that is on the shelf already; null when there is none. */
  there: z.strictObject({ card: cardSchema, changedAt: z.string(), same: z.boolean() }).nullable(),
});
export type ArrivedBundle = z.infer<typeof arrivedBundleSchema>;

export const bundleOperations = {
  /** Packs a swim's folder, clip included, as one zip in the export folder, for another coach. */
  'bundle/make': { input: z.strictObject({ id: idSchema }), output: startedJobSchema },
  /** Checks a bundle that lies on this computer, as if it had been sent; the job ends with the bundle arrived. */
  'bundle/open': {
    input: z.strictObject({ path: z.string().min(1).max(4096) }),
    output: startedJobSchema,
  },
  /**
   * Puts an arrived bundle on the shelf. `new`: refused with `already-there` when its id is taken. `both`: under an id of
   * its own. `replace`: the one there goes into the bin first.
   */
  'bundle/keep': {
    input: z.strictObject({ bundleId: idSchema, as: z.enum(['new', 'both', 'replace']) }),
    output: z.strictObject({ swimId: idSchema }),
  },
  /** Forgets an arrived bundle and removes what was unpacked of it. */
  'bundle/discard': { input: z.strictObject({ bundleId: idSchema }), output: z.strictObject({}) },
} as const;
