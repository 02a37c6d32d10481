import { z } from 'zod';
import { eachOf, withFields } from './migration-parts';
import { type FileFormat, type Parsed, parseFile } from './parse-file';
import { idSchema } from './swim-schema';

const coachFileVersion = 2;

export const coachSchema = z.strictObject({
  format: z.literal('submark-coach'),
  version: z.literal(coachFileVersion),
  /** One entry per re-marked item: what it was, and second minus first mark (seconds, or pixels per axis). */
  remarkings: z
    .array(
      z.strictObject({
        /** Kind of event, or name of the landmark. */
        item: z.string().max(40),
        axis: z.enum(['time', 'x', 'y']),
        difference: z.number(),
        /** Local frame interval in real seconds, for `time`; its rounding is in both marks. Null: not known. */
        frameSeconds: z.number().positive().max(10).nullable(),
        /** Whether the first mark was the coach's own or a followed point. */
        of: z.enum(['marked', 'followed']),
        /** Height of the shown picture that a difference in pixels was made on; left out: not known. */
        pictureHeight: z.number().int().positive().max(65_535).optional(),
        on: z.iso.datetime(),
        swimId: idSchema,
      }),
    )
    .max(100_000),
});
export type CoachFile = z.infer<typeof coachSchema>;

export const coachFormat: FileFormat<CoachFile> = {
  format: 'submark-coach',
  version: coachFileVersion,
  schema: coachSchema,
  migrations: {
    1: (old) => ({
      ...old,
      version: 2,
      remarkings: eachOf(old['remarkings'], (each) => withFields(each, { frameSeconds: null, of: 'marked' })),
    }),
  },
};

/** A coach's file from its text, or why not. */
export function parseCoach(text: string): Parsed<CoachFile> {
  return parseFile(coachFormat, text);
}

export const emptyCoach: CoachFile = { format: 'submark-coach', version: coachFileVersion, remarkings: [] };
