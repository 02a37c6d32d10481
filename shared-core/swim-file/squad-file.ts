import { eachOf, withFields } from './migration-parts';
import { type FileFormat, type Migration, type Parsed, parseFile } from './parse-file';
import { type Squad, squadFileVersion, squadSchema } from './squad-schema';

const withTargets = (swimmer: unknown, change: (targets: unknown) => unknown): unknown =>
  typeof swimmer === 'object' && swimmer !== null && 'targets' in swimmer
    ? { ...swimmer, targets: change(swimmer.targets) }
    : swimmer;

/** From 1 to 2: a target keeps the first day it holds; older ones have none. */
const toVersion2: Migration = (old) => ({
  ...old,
  version: 2,
  swimmers: eachOf(old['swimmers'], (swimmer) =>
    withTargets(swimmer, (targets) => eachOf(targets, (target) => withFields(target, { from: null }))),
  ),
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
