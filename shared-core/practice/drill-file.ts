import { z } from 'zod';
import { type FileFormat, type Parsed, parseFile } from '../swim-file/parse-file';
import { drillSchema } from './drill-schema';
import { usualPatternSchema, usualPatterns } from './usual-pattern';

const drillFileVersion = 1;

/** The coach's own drills and the patterns offered, which start as the usual ones and are the coach's to change. */
export const drillBookSchema = z
  .strictObject({
    format: z.literal('submark-drills'),
    version: z.literal(drillFileVersion),
    drills: z.array(drillSchema).max(1000),
    patterns: z.array(usualPatternSchema).max(100),
  })
  .refine(({ drills }) => new Set(drills.map(({ id }) => id)).size === drills.length, {
    message: 'two drills share an id',
    path: ['drills'],
  });
export type DrillBook = z.infer<typeof drillBookSchema>;

const drillFormat: FileFormat<DrillBook> = {
  format: 'submark-drills',
  version: drillFileVersion,
  schema: drillBookSchema,
  migrations: {},
};

/** The coach's drills from the text of their file, or why not. */
export function parseDrillBook(text: string): Parsed<DrillBook> {
  return parseFile(drillFormat, text);
}

/** The text of the coach's drills, in the schema's key order. */
export function serialiseDrillBook(book: DrillBook): string {
  return `${JSON.stringify(drillBookSchema.parse(book), null, 2)}\n`;
}

export const firstDrillBook: DrillBook = {
  format: 'submark-drills',
  version: drillFileVersion,
  drills: [],
  patterns: [...usualPatterns],
};
