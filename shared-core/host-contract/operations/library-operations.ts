import { z } from 'zod';
import { squadSchema } from '../../swim-file/squad-schema';
import { cardSchema, idSchema } from '../../swim-file/swim-schema';
import { revisionSchema } from './revision';

export const swimSummarySchema = z.strictObject({
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
  }),
  eventCount: z.number().int(),
  postureCount: z.number().int(),
  hasThumbnail: z.boolean(),
  clipStatus: z.enum(['present', 'missing', 'changed']),
  /** A few readings for the card; computed from the marks by shared-core, never stored. */
  headline: z.array(
    z.strictObject({
      id: z.string(),
      value: z.number(),
      half: z.number(),
      unit: z.string(),
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
  'library/open': {
    input: z.strictObject({}),
    output: z.strictObject({
      path: z.string(),
      swims: z.array(swimSummarySchema),
      squad: squadSchema,
      squadRevision: revisionSchema.nullable(),
      problems: z.array(libraryProblemSchema),
    }),
  },
} as const;
