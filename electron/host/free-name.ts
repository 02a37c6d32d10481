import { link, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { flushFile } from './atomic-file';
import { plainName } from './contained-path';
import { draftName } from './drafts';

/** Saves bytes under the first free name ("swim.png", "swim 2.png", …): whole or not at all, never over another file. */
export async function saveUnderFreeName(
  folder: string,
  wanted: string,
  bytes: Uint8Array,
  tempId: string,
): Promise<{ name: string; path: string }> {
  const temp = path.join(folder, `.${draftName(tempId)}`);
  try {
    await writeFile(temp, bytes, { flag: 'wx' });
    return await linkUnderFreeName(folder, wanted, temp);
  } finally {
    await rm(temp, { force: true });
  }
}

/** Gives a whole file the first free name in its own folder, beside the one it was made under. */
export async function linkUnderFreeName(
  folder: string,
  wanted: string,
  temp: string,
): Promise<{ name: string; path: string }> {
  await flushFile(temp);
  const { name: stem, ext } = path.parse(plainName(wanted));
  for (let count = 1; ; count++) {
    const name = count === 1 ? `${stem}${ext}` : `${stem} ${count}${ext}`;
    const target = path.join(folder, name);
    try {
      // a hard link fails when the name is taken, where a rename would silently replace
      await link(temp, target);
      return { name, path: target };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
}
