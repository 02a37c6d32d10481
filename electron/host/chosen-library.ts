import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import envPaths from 'env-paths';
import writeFileAtomic from 'write-file-atomic';
import { z } from 'zod';

const own = envPaths('Submark', { suffix: '' });

/** Remembers which library the coach works in, apart from any library. */
const chosenLibraryFile = path.join(own.config, 'library.json');
/** The place for a library nobody has chosen another for. */
export const usualPlace: WantedLibrary = {
  path: path.join(own.data, 'library'),
  why: 'usual',
  windowFolder: path.join(own.data, 'window'),
};
const chosenSchema = z.strictObject({ library: z.string().min(1).max(4096) });

/** A library's folder, and why it is this one. */
export interface WantedLibrary {
  readonly path: string;
  /** `named` at the start, `chosen` in the app some time before, or the `usual` place. */
  readonly why: 'named' | 'chosen' | 'usual';
  /** Where what belongs to the window alone is kept. */
  readonly windowFolder: string;
}

/** The library to open: the one named at the start, else the one last chosen, else the usual place. */
export function wantedLibrary(
  named: string | undefined = process.env['SUBMARK_LIBRARY'],
  file: string = chosenLibraryFile,
): WantedLibrary {
  if (named) {
    const library = path.resolve(named);
    return { path: library, why: 'named', windowFolder: path.join(path.dirname(library), 'window') };
  }
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch {
    // nothing was ever chosen, or it can't be read: the usual place then
    return usualPlace;
  }
  const chosen = chosenSchema.safeParse(parsed(text));
  return chosen.success && path.isAbsolute(chosen.data.library)
    ? { ...usualPlace, path: chosen.data.library, why: 'chosen' }
    : usualPlace;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // a file somebody else has written: as good as none
    return null;
  }
}

/** Remembers a library for the next start. Rejects when it can't be written. */
export async function chooseLibrary(library: string, file: string = chosenLibraryFile): Promise<void> {
  await mkdir(path.dirname(file), { recursive: true });
  await writeFileAtomic(file, `${JSON.stringify({ library })}\n`);
}
