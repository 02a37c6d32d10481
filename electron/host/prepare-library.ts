import { access, cp, mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { fileFailure } from './file-errors';
import type { LibraryFolder } from './library-folder';

async function exists(file: string): Promise<boolean> {
  try {
    await access(file);
    return true;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return false;
    throw error;
  }
}

/**
 * Makes the library's folders; a library that is new gets the sample swims, and `library.json` last, so that a
 * half-made one is made again. Uploads that never became swims, and half-made working copies and exports, are removed.
 */
export async function prepareLibrary(
  folder: LibraryFolder,
  samples: readonly string[],
): Promise<Result<null>> {
  try {
    await mkdir(folder.root, { recursive: true });
    await rm(folder.arriving, { recursive: true, force: true });
    for (const each of [folder.swims, folder.bin, folder.exports, folder.arriving, folder.copies])
      await mkdir(each, { recursive: true });
    for (const [where, half] of [
      [folder.copies, /\.part$/],
      // hidden, named after an id: nothing of the coach's own
      [folder.exports, /^\.[0-9a-f-]{36}\.part$/],
    ] as const)
      for (const name of await readdir(where))
        if (half.test(name)) await rm(path.join(where, name), { force: true });
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
