import { z } from 'zod';
import { idSchema, isoDaySchema } from './swim-schema';

const metres = z.number().positive().max(5);

/** One swimmer of the library's squad. Consent is whether the coach holds written leave to film and show. */
const swimmerSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1).max(120),
  birthYear: z.number().int().min(1900).max(2100).nullable(),
  /** Tables of body segments exist for women and men (de Leva 1996); null: the mean of both is used. */
  bodyTable: z.enum(['female', 'male']).nullable(),
  /** Fingertip to toe in streamline, metres. */
  streamlineMetres: metres.nullable(),
  consent: z
    .strictObject({
      givenOn: isoDaySchema,
      givenBy: z.string().max(120),
      note: z.string().max(1000),
    })
    .nullable(),
  /**
   * Bands the coach set, by reading id; either end may be open, both open: given up. Of several for one reading the
   * one with the latest day rules; the others are its history.
   */
  targets: z.array(
    z.strictObject({
      reading: z.string().max(80),
      low: z.number().nullable(),
      high: z.number().nullable(),
      /** First day it holds; null: since before days were kept. */
      from: isoDaySchema.nullable(),
    }),
  ),
  invented: z.boolean(),
});
export type Swimmer = z.infer<typeof swimmerSchema>;

export const squadFileVersion = 2;
export const squadSchema = z.strictObject({
  format: z.literal('submark-squad'),
  version: z.literal(squadFileVersion),
  swimmers: z.array(swimmerSchema).max(10_000),
});
export type Squad = z.infer<typeof squadSchema>;
