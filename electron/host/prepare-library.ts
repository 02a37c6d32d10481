import { access, cp, mkdir, readdir, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { fileFailure } from './file-errors';
import { type LibraryFolder, ownArriving } from './library-folder';

async function exists(file: string): Promise<boolean> {
  try {
    await access(file);
    return true;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return false;
    throw error;
  }
}

/** Hours after which another computer on the same folder is no longer sending a file. Our default. */
const forgottenAfterHours = 24;

/** Removes uploads nobody is at: all this computer began, as the library is only now opened, and old ones of others. */
async function removeUnfinished(arriving: string): Promise<void> {
  for (const name of await readdir(arriving)) {
    const file = path.join(arriving, name);
    const facts = await stat(file).catch((error: unknown) => {
      // the other computer has finished with it meanwhile
      fileFailure(error, name, 'reading');
      return null;
    });
    if (!facts) continue;
    if (name.startsWith(ownArriving) || Date.now() - facts.mtimeMs > forgottenAfterHours * 3_600_000)
      await rm(file, { recursive: true, force: true });
  }
}

/**
 * Makes the library's folders; a library that is new gets the sample swims, and `library.json` last, so that a
 * half-made one is made again. This computer's uploads that never became swims, those another left a day ago, and half-made
 * working copies and exports, are removed.
 */
export async function prepareLibrary(
  folder: LibraryFolder,
  samples: readonly string[],
): Promise<Result<null>> {
  try {
    await mkdir(folder.root, { recursive: true });
    for (const each of [folder.swims, folder.bin, folder.exports, folder.arriving, folder.copies])
      await mkdir(each, { recursive: true });
    await removeUnfinished(folder.arriving);
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
