import { z } from 'zod';
import { cardSchema, idSchema } from '../../swim-file/swim-schema';
import { hostErrorSchema } from '../host-error';
import { startedJobSchema } from './job-operations';

const manyIds = z.array(idSchema).min(1).max(100_000);
const failedSchema = z.array(z.strictObject({ id: idSchema, error: hostErrorSchema }));

/** What can be said of many swims at once; what is left out stays as it is. */
const sharedCardSchema = cardSchema
  .pick({ swimmerId: true, swimmerName: true, date: true, drill: true, aids: true })
  .partial();
export type SharedCard = z.infer<typeof sharedCardSchema>;

const cardChangeSchema = z.strictObject({ id: idSchema, card: sharedCardSchema });
export type CardChange = z.infer<typeof cardChangeSchema>;

/** What the job of `swims/change` gives: for each swim changed, what its card said before (given back: one undo). */
export const cardsChangedSchema = z.strictObject({
  before: z.array(cardChangeSchema),
  failed: failedSchema,
});

const movedSchema = z.strictObject({ done: z.array(idSchema), failed: failedSchema });

export const manySwimsOperations = {
  /** Starts a job that changes the cards of many swims; its result is `cardsChangedSchema`. Cancelled, it keeps what it has done. */
  'swims/change': {
    input: z.strictObject({ changes: z.array(cardChangeSchema).min(1).max(100_000) }),
    output: startedJobSchema,
  },
  /** Moves many swims into the bin, or back onto the shelf; those that can't be moved are told. */
  'swims/remove': { input: z.strictObject({ ids: manyIds }), output: movedSchema },
  'swims/restore': { input: z.strictObject({ ids: manyIds }), output: movedSchema },
} as const;
