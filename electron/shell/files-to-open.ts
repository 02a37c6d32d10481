import { statSync } from 'node:fs';
import path from 'node:path';
import type { App } from 'electron';
import { filmEndings } from '#core/host-contract/operations/place-operations';

/** What a command line may name besides is the program's own: only films and bundles are opened. */
const known: ReadonlySet<string> = new Set([...filmEndings, 'zip'].map((ending) => `.${ending}`));

const isFile = (place: string): boolean => {
  try {
    return statSync(place).isFile();
  } catch {
    // not a file of this computer: some other word for the program
    return false;
  }
};

/**
 * The files named on a command line, by their whole paths: what was opened with Submark or dropped on its icon. Before
 * them stand the program and, when Electron's own program runs a folder, that folder.
 */
export function filesNamed(argv: readonly string[], from: string, programWords: number): string[] {
  return argv
    .slice(programWords)
    .filter((word) => !word.startsWith('-') && known.has(path.extname(word).toLowerCase()))
    .map((word) => path.resolve(from, word))
    .filter(isFile);
}

/** What a second start sends to the first: its files, as Chromium may change the order of its words. */
export interface FromSecondStart {
  readonly files: readonly string[];
}

/** Reads what a second start sent; it may be of another version, or not sent by us at all. */
export function filesSent(sent: unknown): string[] {
  const files = (sent as { files?: unknown } | null)?.files;
  return Array.isArray(files) ? files.filter((each): each is string => typeof each === 'string') : [];
}

/**
 * Hears of files opened with Submark, from now on: macOS sends them one by one, also before anything is ready; a second
 * start brings its own.
 */
export function hearOfFiles(
  app: Pick<App, 'on'>,
  onFiles: (paths: readonly string[]) => void,
  onSecondStart: () => void,
): void {
  app.on('open-file', (event, place) => {
    event.preventDefault();
    onFiles([place]);
  });
  app.on('second-instance', (_event, _argv, _from, sent) => {
    onSecondStart();
    const files = filesSent(sent);
    if (files.length > 0) onFiles(files);
  });
}
