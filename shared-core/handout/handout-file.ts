import { z } from 'zod';
import { type FileFormat, type Parsed, parseFile } from '../swim-file/parse-file';
import { idSchema } from '../swim-file/swim-schema';

export const handoutFileVersion = 1;
export const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];

export const mostHandoutFrames = 3;
export const mostHandoutReadings = 3;
/** Longer than this it is no cue any more: a swimmer keeps one short sentence in mind. Our default. */
export const longestCue = 120;

/** What the coach chose for a swim's handout; kept in the swim's folder. Everything else on it comes from the swim. */
export const handoutSchema = z.strictObject({
  format: z.literal('submark-handout'),
  version: z.literal(handoutFileVersion),
  swimId: idSchema,
  changedAt: z.iso.datetime(),
  paper: z.enum(papers),
  /** Frames of the pictures, from 0, the large one first. */
  frames: z.array(z.number().int().nonnegative()).max(mostHandoutFrames),
  /** Ids of the readings, left to right. */
  readings: z.array(z.string().regex(/^[a-z0-9-]{1,80}$/)).max(mostHandoutReadings),
  /** The one thing to think of, in the coach's words; empty: none. */
  cue: z.string().max(longestCue),
});
export type Handout = z.infer<typeof handoutSchema>;

const handoutFormat: FileFormat<Handout> = {
  format: 'submark-handout',
  version: handoutFileVersion,
  schema: handoutSchema,
  migrations: {},
};

/** A handout's choices from the text of its file, or why not. */
export function parseHandout(text: string): Parsed<Handout> {
  return parseFile(handoutFormat, text);
}
