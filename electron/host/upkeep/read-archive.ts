import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import yauzl from 'yauzl';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { fileFailure } from '../../disk/file-errors';
import { isAbort } from '../../disk/is-abort';
import type { JobReport } from '../jobs';
import { type Manifest, manifestName, manifestSchema } from './archive-manifest';
import { hostJobsWords } from '#core/words/host-jobs';

/** Takes one entry's bytes; `bytes` must be consumed. */
export type Take = (path: string, bytes: Readable) => Promise<void>;

/** Largest manifest that is read: a hundred thousand files and more. Our own limit against broken archives. */
const manifestLimit = 64 * 1024 * 1024;

/**
 * Reads a back-up archive from end to end, hands each file to `take`, and checks every byte against the manifest: each
 * file that it lists is there with its SHA-256, and nothing else is. Names that would leave the folder are refused by
 * the zip reader itself.
 */
export async function readArchive(
  archive: string,
  take: Take,
  signal: AbortSignal,
  report: JobReport,
): Promise<Result<Manifest>> {
  // names in it are as long as its maker liked
  const damaged = (what: string): Result<never> =>
    failure('archive-damaged', { name: archive, what: what.slice(0, 300) });
  let zip: Awaited<ReturnType<typeof yauzl.openPromise>>;
  try {
    zip = await yauzl.openPromise(archive, { lazyEntries: true, autoClose: false, strictFileNames: true });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code) return fileFailure(error, archive, 'reading');
    return damaged(hostJobsWords('noArchiveCan'));
  }
  const seen = new Map<string, { bytes: number; sha256: string }>();
  let manifestText: string | null = null;
  let taking: Promise<void> = Promise.resolve();
  try {
    for await (const entry of zip.eachEntry()) {
      signal.throwIfAborted();
      const stream = await zip.openReadStreamPromise(entry);
      if (entry.fileName === manifestName) {
        if (entry.uncompressedSize > manifestLimit) return damaged(hostJobsWords('hasManifestToo'));
        const parts: Buffer[] = [];
        for await (const part of stream) parts.push(part as Buffer);
        manifestText = Buffer.concat(parts).toString('utf8');
        continue;
      }
      if (entry.fileName.endsWith('/') || seen.has(entry.fileName))
        return damaged(hostJobsWords('holdsWhichNo', { fileName: entry.fileName }));
      const hash = createHash('sha256');
      let bytes = 0;
      const counted = pipeline(
        stream,
        async function* count(source: AsyncIterable<Buffer>) {
          for await (const part of source) {
            hash.update(part);
            bytes += part.length;
            yield part;
          }
        },
        async (source) => {
          taking = take(entry.fileName, source as unknown as Readable);
          await taking;
        },
        { signal },
      );
      await counted;
      seen.set(entry.fileName, { bytes, sha256: hash.digest('hex') });
      report(
        zip.entryCount > 0 ? seen.size / zip.entryCount : null,
        hostJobsWords('filesSeen', { seen: seen.size, entryCount: zip.entryCount }),
      );
    }
  } catch (error) {
    // the archive may have failed under it: what was being written is closed before anybody cleans up
    await Promise.allSettled([taking]);
    if (isAbort(error)) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? '';
    // a full disk or a lost one is told as that; anything else the reader says is about the archive
    if (/^E[A-Z]+$/.test(code)) return fileFailure(error, archive, 'writing');
    return damaged(error instanceof Error ? error.message : hostJobsWords('breaksOff'));
  } finally {
    zip.close();
  }
  if (manifestText === null) return damaged(hostJobsWords('hasNoManifest'));
  let raw: unknown;
  try {
    raw = JSON.parse(manifestText);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return damaged(hostJobsWords('hasManifestCant'));
  }
  const manifest = manifestSchema.safeParse(raw);
  if (!manifest.success) return damaged(hostJobsWords('hasManifestCant'));
  for (const { path, bytes, sha256 } of manifest.data.files) {
    const found = seen.get(path);
    if (!found) return damaged(hostJobsWords('lacks', { path }));
    if (found.bytes !== bytes || found.sha256 !== sha256)
      return damaged(hostJobsWords('holdsAnotherThan', { path }));
    seen.delete(path);
  }
  const [extra] = seen.keys();
  return extra === undefined ? success(manifest.data) : damaged(hostJobsWords('holdsWhichIts', { extra }));
}

/** Bytes that an archive says it unpacks to; null when it can't be read as one. */
export async function claimedBytes(archive: string): Promise<number | null> {
  let zip: Awaited<ReturnType<typeof yauzl.openPromise>> | null = null;
  let bytes = 0;
  try {
    zip = await yauzl.openPromise(archive, { lazyEntries: true, autoClose: false, strictFileNames: true });
    for await (const entry of zip.eachEntry()) bytes += entry.uncompressedSize;
    return bytes;
  } catch {
    // what is wrong with it is told by reading it
    return null;
  } finally {
    zip?.close();
  }
}
