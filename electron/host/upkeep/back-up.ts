import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { link, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import yazl from 'yazl';
import type { z } from 'zod';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { backedUpSchema } from '#core/host-contract/operations/upkeep-operations';
import { draftName, isDraft, sweepForgotten } from '../../disk/drafts';
import { fileFailure } from '../../disk/file-errors';
import type { JobReport } from '../jobs';
import type { LibraryFolder } from '../library-folder';
import { type Manifest, manifestName } from './archive-manifest';
import { readArchive } from './read-archive';
import { type WalkedFile, walkFiles } from './walk-files';
import { hostJobsWords } from '#core/words/host-jobs';

/** Film and pictures are packed already: packing them again only takes time. */
const packed = /\.(mp4|mov|m4v|mkv|webm|avi|mts|m2ts|jpg|jpeg|png|pdf|zip)$/i;
const leftOut = /^(\.cache|\.arriving)\//;

/** Where an archive may go: a whole path to a .zip that is not there yet, and not inside the library itself. */
async function archivePlace(folder: LibraryFolder, file: string): Promise<Result<null>> {
  const name = path.basename(file);
  if (!path.isAbsolute(file) || file.includes('\0') || !/\.zip$/i.test(file))
    return failure('not-allowed', { name: file });
  const inside = path.relative(folder.root, file);
  if (!inside.startsWith('..') && !path.isAbsolute(inside)) return failure('not-allowed', { name: file });
  try {
    await stat(file);
    return failure('already-there', { name });
  } catch (error) {
    const failed = fileFailure(error, name, 'writing');
    if (!failed.ok && failed.error.code !== 'not-found') return failed;
  }
  try {
    if ((await stat(path.dirname(file))).isDirectory()) return success(null);
    return failure('not-found', { name: path.dirname(file) });
  } catch (error) {
    return fileFailure(error, path.dirname(file), 'writing');
  }
}

/**
 * Writes the library into one archive, each file with its SHA-256 in a manifest, then reads the archive back and checks
 * every byte before it gets its name. A cancelled or failed one leaves nothing.
 */
export async function backUp(
  folder: LibraryFolder,
  file: string,
  outside: readonly string[],
  tempId: string,
  signal: AbortSignal,
  report: JobReport,
): Promise<Result<z.infer<typeof backedUpSchema>>> {
  const place = await archivePlace(folder, file);
  if (!place.ok) return place;
  const part = `${file}.${draftName(tempId)}`;
  try {
    await sweepForgotten(path.dirname(file), (name) => isDraft(name) && /\.zip\./i.test(name));
    const written = await writeArchive(folder, part, outside, signal, (share, words) =>
      report(share === null ? null : share / 2, words),
    );
    const checked = await readArchive(
      part,
      async (_name, bytes) => {
        for await (const _ of bytes) continue;
      },
      signal,
      (share, words) =>
        report(share === null ? null : 0.5 + share / 2, hostJobsWords('checking', { words: String(words) })),
    );
    if (!checked.ok) return checked;
    await takeName(part, file);
    return success({ ...written, path: file, outside: [...outside] });
  } catch (error) {
    if (signal.aborted) throw error;
    return fileFailure(error, path.basename(file), 'writing');
  } finally {
    await rm(part, { force: true });
  }
}

/** Gives a whole file its name, never over another. */
async function takeName(part: string, file: string): Promise<void> {
  try {
    await link(part, file);
  } catch (error) {
    // a stick's file system may know no second names; the name was free a moment ago
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes((error as NodeJS.ErrnoException).code ?? ''))
      throw error;
    await rename(part, file);
  }
}

async function writeArchive(
  folder: LibraryFolder,
  part: string,
  outside: readonly string[],
  signal: AbortSignal,
  report: JobReport,
): Promise<{ files: number; bytes: number }> {
  const files: WalkedFile[] = [];
  for await (const each of walkFiles(folder.root, signal)) if (!leftOut.test(each.name)) files.push(each);
  const total = files.reduce((sum, { facts }) => sum + facts.size, 0);
  const manifest: Manifest['files'] = [];
  let done = 0;
  const zip = new yazl.ZipFile();
  // what a file's stream meets is met by the archive, whose end is waited for
  const failed = (error: unknown): void => {
    (zip.outputStream as Readable).destroy(error instanceof Error ? error : new Error(String(error)));
  };
  zip.on('error', failed);
  for (const { name, full, facts } of files)
    zip.addReadStreamLazy(name, { mtime: facts.mtime, compress: !packed.test(name) }, (give) => {
      const hash = createHash('sha256');
      let bytes = 0;
      const counted = new Transform({
        transform(chunk: Buffer, _encoding, next) {
          hash.update(chunk);
          bytes += chunk.length;
          done += chunk.length;
          report(total > 0 ? done / total : null, name.slice(-120));
          next(null, chunk);
        },
        flush(next) {
          manifest.push({ path: name, bytes, sha256: hash.digest('hex') });
          next();
        },
      });
      pipeline(createReadStream(full), counted, { signal }).catch(failed);
      give(null, counted);
    });
  zip.addReadStreamLazy(manifestName, { compress: true }, (give) => {
    const text: Manifest = {
      format: 'submark-archive',
      version: 1,
      createdAt: new Date().toISOString(),
      files: manifest,
      outside: [...outside],
    };
    give(null, Readable.from([Buffer.from(JSON.stringify(text, null, 1))]));
  });
  zip.end();
  await pipeline(zip.outputStream as Readable, createWriteStream(part, { flags: 'wx', flush: true }), {
    signal,
  });
  return { files: manifest.length, bytes: done };
}
