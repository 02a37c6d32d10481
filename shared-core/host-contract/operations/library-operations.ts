import { z } from 'zod';
import { squadSchema } from '../../swim-file/squad-schema';
import { cardSchema, clipSchema, idSchema } from '../../swim-file/swim-schema';
import { revisionSchema } from './revision';

const swimSummarySchema = z.strictObject({
  id: idSchema,
  revision: revisionSchema,
  changedAt: z.string(),
  card: cardSchema,
  clip: z.strictObject({
    originalName: z.string(),
    width: z.number(),
    height: z.number(),
    frames: z.number(),
    /** Length in real seconds. */
    seconds: z.number(),
    slowdown: z.number(),
    /** The clip lies in the swim's own folder; else it was left where it lay. */
    inside: z.boolean(),
    fingerprint: clipSchema.shape.fingerprint,
  }),
  eventCount: z.number().int(),
  postureCount: z.number().int(),
  /** What was seen without a mark: on how many pictures, moments still to decide, and how many of those are hardly known. Null: not seen, or not counted yet. */
  seen: z
    .strictObject({
      pictures: z.number().int().positive(),
      open: z.number().int().nonnegative(),
      doubtful: z.number().int().nonnegative(),
    })
    .nullable(),
  hasThumbnail: z.boolean(),
  /** Other versions of the swim's file kept beside it, because it was changed in two places. */
  copies: z.number().int().nonnegative(),
  clipStatus: z.enum(['present', 'missing', 'changed']),
  /** A few readings for the card; computed from the marks by shared-core, never stored. */
  headline: z.array(
    z.strictObject({
      id: z.string(),
      value: z.number(),
      half: z.number(),
      unit: z.string(),
      doubtful: z.boolean(),
    }),
  ),
});
export type SwimSummary = z.infer<typeof swimSummarySchema>;

const libraryProblemSchema = z.strictObject({
  folder: z.string(),
  code: z.enum(['swim-damaged', 'swim-newer-version', 'cannot-read']),
  detail: z.record(z.string(), z.union([z.string(), z.number()])),
});

export const libraryOperations = {
  /**
   * `partly`: answers soon with the swims that are known already, and how many are still to come (`pending`). `atMost`:
   * looks only at so many from the top of the shelf, for the first picture of it. `remembered`: tells what the index has
   * without looking whether it still stands (`checked` is false then); to be asked again without it soon after.
   */
  'library/open': {
    input: z.strictObject({
      partly: z.boolean().optional(),
      atMost: z.number().int().positive().optional(),
      remembered: z.boolean().optional(),
    }),
    output: z.strictObject({
      path: z.string(),
      swims: z.array(swimSummarySchema),
      squad: squadSchema,
      squadRevision: revisionSchema.nullable(),
      problems: z.array(libraryProblemSchema),
      pending: z.number().int().nonnegative(),
      /** Swims that are told without readings, because their marks are still being read. */
      readingsPending: z.number().int().nonnegative(),
      checked: z.boolean(),
    }),
  },
} as const;
