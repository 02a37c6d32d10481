import { type FileFormat, type Parsed, parseFile } from '../swim-file/parse-file';
import { type Practice, practiceFileVersion, practiceSchema } from './practice-schema';

export const practiceFormat: FileFormat<Practice> = {
  format: 'submark-practice',
  version: practiceFileVersion,
  schema: practiceSchema,
  migrations: {
    // paces were assumed for every practice
    1: (old) => ({ ...old, version: 2, pace: null }),
  },
};

/** A practice from the text of its file, or why not. */
export function parsePractice(text: string): Parsed<Practice> {
  return parseFile(practiceFormat, text);
}

/**
 * The text of a practice's file: fixed key order (the schema's), one item and one log entry a line, so that two
 * versions of a file differ only where the practices do. `parsePractice` of it gives the practice back.
 */
export function serialisePractice(practice: Practice): string {
  const { items, log, ...head } = practiceSchema.parse(practice);
  const lines = (list: readonly unknown[]): string =>
    list.length === 0 ? '[]' : `[\n${list.map((each) => `    ${JSON.stringify(each)}`).join(',\n')}\n  ]`;
  const headText = JSON.stringify(head, null, 2).slice(0, -2);
  return `${headText},\n  "items": ${lines(items)},\n  "log": ${lines(log)}\n}\n`;
}
