import { type FileFormat, type Parsed, parseFile } from './parse-file';
import { type Squad, squadFileVersion, squadSchema } from './squad-schema';

export const squadFormat: FileFormat<Squad> = {
  format: 'submark-squad',
  version: squadFileVersion,
  schema: squadSchema,
  migrations: {},
};

/** A squad from the text of its file, or why not. */
export function parseSquad(text: string): Parsed<Squad> {
  return parseFile(squadFormat, text);
}

export const emptySquad: Squad = { format: 'submark-squad', version: squadFileVersion, swimmers: [] };
