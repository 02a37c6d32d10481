import { z } from 'zod';
import { type FileFormat, type Parsed, parseFile } from '../swim-file/parse-file';
import { idSchema } from '../swim-file/swim-schema';
import { conditionTagsSchema } from '../swim-file/condition-tags';
import { neverCompared } from '../measures/never-compared';

export const trialFileVersion = 1;

const factorSchema = z.discriminatedUnion('of', [
  z.strictObject({ of: z.enum(['arms', 'sideUp', 'drill', 'aids', 'head', 'hips', 'depth']) }),
  z.strictObject({ of: z.literal('tag'), tag: z.string().min(1).max(60) }),
]);

/** A trial: which swims, under which conditions, asked about which readings. What comes of it is never stored. */
export const trialSchema = z.strictObject({
  format: z.literal('submark-trial'),
  version: z.literal(trialFileVersion),
  id: idSchema,
  createdAt: z.iso.datetime(),
  changedAt: z.iso.datetime(),
  title: z.string().max(200),
  factor: factorSchema,
  readings: z
    .array(z.string().regex(/^[a-z0-9-]{1,80}$/))
    .max(20)
    .refine((ids) => !ids.some(neverCompared), 'time and distance under water are never compared'),
  rows: z
    .array(
      z.strictObject({
        swimId: idSchema,
        order: z.number().int().nonnegative().max(100_000),
        tags: conditionTagsSchema,
      }),
    )
    .max(1000),
  /** The random order offered, so that what was planned can be held against what was swum. */
  plan: z
    .strictObject({
      seed: z.number().int(),
      conditions: z.array(z.string().min(1).max(60)).min(2).max(20),
      repeatsEach: z.number().int().min(1).max(50),
    })
    .nullable(),
  note: z.string().max(4000),
  invented: z.boolean(),
});
export type Trial = z.infer<typeof trialSchema>;

const trialFormat: FileFormat<Trial> = {
  format: 'submark-trial',
  version: trialFileVersion,
  schema: trialSchema,
  migrations: {},
};

/** A trial from the text of its file, or why not. */
export function parseTrial(text: string): Parsed<Trial> {
  return parseFile(trialFormat, text);
}

/** The text of a trial's file, in the schema's key order. */
export function serialiseTrial(trial: Trial): string {
  return `${JSON.stringify(trialSchema.parse(trial), null, 2)}\n`;
}
