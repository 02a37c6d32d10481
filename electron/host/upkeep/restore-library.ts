import { createWriteStream } from 'node:fs';
import { mkdir, rename, rm, rmdir, statfs } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { z } from 'zod';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { restoredSchema } from '#core/host-contract/operations/upkeep-operations';
import { draftName, isDraft, sweepForgotten } from '../../disk/drafts';
import { taken } from '../../disk/exists';
import { fileFailure } from '../../disk/file-errors';
import type { JobReport } from '../jobs';
import { partsInside } from './parts-inside';
import { claimedBytes, readArchive } from './read-archive';
import { hostJobsWords } from '#core/words/host-jobs';

/** Bytes that can still be written where a folder lies. */
async function roomOn(folder: string): Promise<number> {
  const { bavail, bsize } = await statfs(folder);
  return bavail * bsize;
}

/**
 * Makes a library folder out of a back-up: unpacked beside its place, checked to the last byte, and only then given its
 * name. Never into a folder that holds anything, and not begun when it says it needs more room than there is: the reader
 * holds each file to the size it said, so that an archive made to fill a disk can't.
 */
export async function restoreLibrary(
  archive: string,
  folder: string,
  tempId: string,
  signal: AbortSignal,
  report: JobReport,
  room: (folder: string) => Promise<number> = roomOn,
): Promise<Result<z.infer<typeof restoredSchema>>> {
  for (const each of [archive, folder])
    if (!path.isAbsolute(each) || each.includes('\0')) return failure('not-allowed', { name: each });
  const part = `${folder}.${draftName(tempId)}`;
  try {
    if (await taken(folder)) return failure('already-there', { name: path.basename(folder) });
    await mkdir(part, { recursive: true });
    const ours = `${path.basename(folder)}.`;
    await sweepForgotten(path.dirname(folder), (name) => name.startsWith(ours) && isDraft(name));
    const needed = await claimedBytes(archive);
    if (needed !== null && needed > (await room(part)))
      return failure('disk-full', { name: path.basename(folder) });
    const read = await readArchive(
      archive,
      async (name, bytes) => {
        const parts = partsInside(name);
        if (!parts) throw new Error(`holds ${name}, which is no name for a file`);
        await mkdir(path.join(part, ...parts.slice(0, -1)), { recursive: true });
        await pipeline(bytes, createWriteStream(path.join(part, ...parts), { flags: 'wx', flush: true }));
      },
      signal,
      report,
    );
    if (!read.ok) return read;
    const { files } = read.value;
    if (!files.some(({ path: name }) => name === 'library.json'))
      return failure('archive-damaged', { name: archive, what: hostJobsWords('noBackUpWhole') });
    if (await taken(folder)) return failure('already-there', { name: path.basename(folder) });
    await rmdir(folder).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    });
    await rename(part, folder);
    return success({
      path: folder,
      files: files.length,
      bytes: files.reduce((sum, { bytes }) => sum + bytes, 0),
      swims: files.filter(({ path: name }) => /^swims\/[^/]+\/swim\.json$/.test(name)).length,
    });
  } catch (error) {
    if (signal.aborted) throw error;
    return fileFailure(error, path.basename(folder), 'writing');
  } finally {
    await rm(part, { recursive: true, force: true });
  }
}
