import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * Folder of files that nobody here wrote, as the environment says or beside the project. Null, with a plain message,
 * where it is absent: the files carry their own licences and are not part of the project.
 */
export function outsideFolder(name: string): string | null {
  const root =
    process.env['SUBMARK_OUTSIDE_DATA'] ??
    fileURLToPath(new URL('../../../../shared/outside-data', import.meta.url));
  const folder = `${root}/${name}`;
  if (existsSync(folder)) return folder;
  console.info(
    `Outside data not found at ${folder}: its tests are skipped. Set SUBMARK_OUTSIDE_DATA to run them.`,
  );
  return null;
}

/** Rows of a plain comma-separated file, first line as names of columns; no quoting. */
export function readTable(text: string): { names: readonly string[]; rows: readonly (readonly string[])[] } {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const [names = [], ...rows] = lines.map((line) => line.split(',').map((cell) => cell.trim()));
  return { names, rows };
}
