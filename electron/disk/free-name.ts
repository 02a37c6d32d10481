import { randomUUID } from 'node:crypto';
import { link, rm } from 'node:fs/promises';
import path from 'node:path';
import { flushFile } from './atomic-file';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { plainName } from './contained-path';
import { draftName } from './drafts';
import { fileFailure } from './file-errors';
import { receiveBody } from './receive-body';

/**
 * Saves what is sent under the first free name ("swim.png", "swim 2.png", …): whole or not at all, never over another
 * file, and never more bytes than the limit.
 */
export async function saveUnderFreeName(
  folder: string,
  wanted: string,
  body: ReadableStream<Uint8Array> | null,
  limit: number,
): Promise<Result<{ name: string; path: string }>> {
  if (!body) return failure('empty-file', { name: wanted });
  const temp = path.join(folder, `.${draftName(randomUUID())}`);
  try {
    const received = await receiveBody(body, temp, { name: wanted, limit });
    if (!received.ok) return received;
    return success(await linkUnderFreeName(folder, wanted, temp));
  } catch (error) {
    return fileFailure(error, wanted, 'writing');
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
