import { type FileFormat, type Migration, type Parsed, parseFile } from './parse-file';
import { type Squad, squadFileVersion, squadSchema } from './squad-schema';

const list = (value: unknown): readonly Record<string, unknown>[] =>
  Array.isArray(value) ? (value as Record<string, unknown>[]) : [];

/** From 1 to 2: a target keeps the first day it holds; older ones have none. */
const toVersion2: Migration = (old) => ({
  ...old,
  version: 2,
  swimmers: list(old['swimmers']).map((swimmer) => ({
    ...swimmer,
    targets: list(swimmer['targets']).map((target) => ({ from: null, ...target })),
  })),
});

export const squadFormat: FileFormat<Squad> = {
  format: 'submark-squad',
  version: squadFileVersion,
  schema: squadSchema,
  migrations: { 1: toVersion2 },
};

/** A squad from the text of its file, or why not. */
export function parseSquad(text: string): Parsed<Squad> {
  return parseFile(squadFormat, text);
}

export const emptySquad: Squad = { format: 'submark-squad', version: squadFileVersion, swimmers: [] };
