import type { Dirent, Stats } from 'node:fs';
import { lstat, readdir } from 'node:fs/promises';
import path from 'node:path';
import { fileFailure } from '../../disk/file-errors';

export interface WalkedFile {
  /** Path under the folder walked, with '/' between its parts on every system. */
  readonly name: string;
  readonly full: string;
  readonly facts: Stats;
}

/**
 * Every plain file under a folder, sorted within each; links are not followed, so nothing outside is reached. A folder
 * that can't be looked into is told to `onClosed` and passed over.
 */
export async function* walkFiles(
  root: string,
  signal: AbortSignal,
  onClosed: (folder: string) => void = () => undefined,
): AsyncGenerator<WalkedFile> {
  async function* walk(folder: string, prefix: string): AsyncGenerator<WalkedFile> {
    let entries: Dirent[];
    try {
      entries = await readdir(folder, { withFileTypes: true });
    } catch (error) {
      fileFailure(error, folder, 'reading');
      onClosed(folder);
      return;
    }
    entries.sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const entry of entries) {
      signal.throwIfAborted();
      const full = path.join(folder, entry.name);
      if (entry.isDirectory()) yield* walk(full, `${prefix}${entry.name}/`);
      else if (entry.isFile()) {
        // a file may go between being listed and being looked at
        const facts = await lstat(full).catch((error: unknown) => {
          fileFailure(error, entry.name, 'reading');
          return null;
        });
        if (facts) yield { name: `${prefix}${entry.name}`, full, facts };
      }
    }
  }
  yield* walk(root, '');
}
