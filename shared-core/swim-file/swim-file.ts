import { type FileFormat, type Parsed, parseFile } from './parse-file';
import { swimMigrations } from './swim-migrations';
import { type Swim, swimFileVersion, swimSchema } from './swim-schema';

export const swimFormat: FileFormat<Swim> = {
  format: 'submark-swim',
  version: swimFileVersion,
  schema: swimSchema,
  migrations: swimMigrations,
};

/** A swim from the text of its file, or why not. */
export function parseSwim(text: string): Parsed<Swim> {
  return parseFile(swimFormat, text);
}

/**
 * The text of a swim's file: fixed key order (the schema's), events by frame, postures by frame, one mark a line, so
 * that two versions of a file differ only where the swims do. `parseSwim` of it gives the swim back.
 */
export function serialiseSwim(swim: Swim): string {
  const { events, postures, followed, seen, cameraPath, dismissed, ...head } = swimSchema.parse(swim);
  const byFrame = <T extends { frame: number }>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => a.frame - b.frame);
  const byFirst = (list: typeof cameraPath): typeof cameraPath =>
    [...list].sort((a, b) => (a.frames[0] as number) - (b.frames[0] as number));
  const lines = (list: readonly unknown[]): string =>
    list.length === 0 ? '[]' : `[\n${list.map((each) => `    ${JSON.stringify(each)}`).join(',\n')}\n  ]`;
  const headText = JSON.stringify(head, null, 2).slice(0, -2);
  return `${headText},\n  "events": ${lines(byFrame(events))},\n  "postures": ${lines(byFrame(postures))},\n  "followed": ${lines(byFrame(followed))},\n  "seen": ${lines(byFrame(seen))},\n  "cameraPath": ${lines(byFirst(cameraPath))},\n  "dismissed": ${lines(byFrame(dismissed))}\n}\n`;
}
