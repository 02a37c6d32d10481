import { cp, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { sweepForgotten } from '../disk/drafts';
import { exists } from '../disk/exists';
import { fileFailure } from '../disk/file-errors';
import type { LibraryFolder } from './library-folder';

/**
 * Makes the library's folders; a library that is new gets the sample swims, and `library.json` last, so that a
 * half-made one is made again. Uploads that never became swims, and half-made working copies and exports, are removed where
 * nobody is at them any more: two programs may hold one library.
 */
export async function prepareLibrary(
  folder: LibraryFolder,
  samples: readonly string[],
): Promise<Result<null>> {
  try {
    await mkdir(folder.root, { recursive: true });
    for (const each of [folder.swims, folder.bin, folder.exports, folder.arriving, folder.copies])
      await mkdir(each, { recursive: true });
    await sweepForgotten(folder.arriving, () => true);
    await sweepForgotten(folder.copies, (name) => name.endsWith('.part'));
    // hidden, named after ids: nothing of the coach's own
    await sweepForgotten(folder.exports, (name) => /^\.[0-9a-f-]{36,}\.part$/.test(name));
    if (await exists(folder.about)) return success(null);
    for (const from of samples)
      for (const [name, into] of [
        ['swims', folder.swims],
        ['squad.json', folder.squad],
        ['practices', folder.practices],
        ['trials', folder.trials],
        ['drills.json', folder.drills],
      ] as const)
        if (await exists(path.join(from, name)))
          await cp(path.join(from, name), into, { recursive: true, force: false });
    await writeFile(folder.about, `${JSON.stringify({ format: 'submark-library', version: 1 }, null, 2)}\n`);
    return success(null);
  } catch (error) {
    return fileFailure(error, path.basename(folder.root), 'writing');
  }
}

/** Whether the library is still there (a disk can be unplugged while the window is open). */
export async function libraryPresent(folder: LibraryFolder): Promise<Result<null>> {
  try {
    return (await exists(folder.about)) ? success(null) : failure('library-gone', { name: folder.root });
  } catch (error) {
    return fileFailure(error, path.basename(folder.root), 'reading');
  }
}
