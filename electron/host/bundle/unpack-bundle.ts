import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import yauzl from 'yauzl';
import { type BundleManifest, manifestName, parseBundleManifest } from '#core/bundle/bundle-manifest';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { containedPath, isPlainName } from '../../disk/contained-path';
import { fileFailure } from '../../disk/file-errors';
import { fingerprintOf, sameFingerprint } from '../fingerprint';
import { faultFailure } from '../kept-file';
import { hostJobsWords } from '#core/words/host-jobs';

/** Our limits, bytes: of the manifest, of marks and handout, and of all files together (a long 4K film). */
const manifestLimit = 64 * 1024;
const textLimit = 256 * 1024 * 1024;
const wholeLimit = 64 * 1024 ** 3;
/** Zipped text shrinks some twenty times; a bomb a thousand. Our limit, for files of more than a megabyte. */
const ratioLimit = 200;
const entryLimit = 16;

export interface Unpacked {
  readonly swim: Swim;
  readonly manifest: BundleManifest;
}

const damaged = (what: string): Result<never> => failure('bundle-damaged', { what });

/**
 * Unpacks a bundle into a folder that is made for it, and believes nothing: every name must be a plain file name listed
 * in the manifest, once; sizes are held to what was said while they are written; SHA-256 of each file, the swim's own
 * file and the clip's fingerprint must agree. On a failure the caller removes the folder.
 */
export async function unpackBundle(zip: string, into: string): Promise<Result<Unpacked>> {
  let file: yauzl.ZipFile;
  try {
    file = await openZip(zip);
  } catch (error) {
    return isFileError(error)
      ? fileFailure(error, hostJobsWords('bundle'), 'reading')
      : damaged(wordsOf(error));
  }
  try {
    const entries = await listEntries(file);
    if (!entries.ok) return entries;
    const first = entries.value.find((entry) => entry.fileName === manifestName);
    if (!first) return damaged(hostJobsWords('holdsNoManifest'));
    if (first.uncompressedSize > manifestLimit) return damaged(hostJobsWords('itsManifestToo'));
    const text = Buffer.concat(await chunksOf(file, first, manifestLimit)).toString('utf8');
    const parsed = parseBundleManifest(text);
    if (!parsed.ok)
      return faultFailure(
        parsed.fault,
        { damaged: 'bundle-damaged', newer: 'file-newer-version' },
        hostJobsWords('bundle'),
      );
    const manifest = parsed.value;
    const agreed = agree(manifest, entries.value);
    if (!agreed.ok) return agreed;
    await mkdir(into);
    for (const said of manifest.files) {
      const entry = entries.value.find((each) => each.fileName === said.name);
      if (!entry) return damaged(hostJobsWords('missingFrom', { name: said.name }));
      const target = await containedPath(into, said.name);
      if (target === null) return damaged(hostJobsWords('nameLeadsElsewhere'));
      const hash = createHash('sha256');
      await pipeline(
        await openEntry(file, entry),
        atMost(said.bytes),
        async function* (chunks: AsyncIterable<Buffer>) {
          for await (const chunk of chunks) {
            hash.update(chunk);
            yield chunk;
          }
        },
        createWriteStream(target, { flags: 'wx', flush: true }),
      );
      if (hash.digest('hex') !== said.sha256)
        return damaged(hostJobsWords('changedAfterPacking', { name: said.name }));
    }
    return await checkSwim(manifest, into);
  } catch (error) {
    return isFileError(error)
      ? fileFailure(error, hostJobsWords('bundle'), 'writing')
      : damaged(wordsOf(error));
  } finally {
    file.close();
  }
}

function agree(manifest: BundleManifest, entries: readonly yauzl.Entry[]): Result<null> {
  const names = manifest.files.map(({ name }) => name);
  const folded = new Set(names.map((name) => name.toLowerCase()));
  if (folded.size !== names.length || folded.has(manifestName))
    return damaged(hostJobsWords('itsManifestNames'));
  if (names.some((name) => !isPlainName(name) || name.startsWith('.')))
    return damaged(hostJobsWords('nameLeadsElsewhere'));
  if (entries.length !== names.length + 1) return damaged(hostJobsWords('holdsFilesIts'));
  const total = manifest.files.reduce((sum, { bytes }) => sum + bytes, 0);
  if (total > wholeLimit) return failure('too-large', { name: hostJobsWords('bundle') });
  for (const { name, bytes } of manifest.files) {
    const entry = entries.find((each) => each.fileName === name);
    if (!entry || entry.uncompressedSize !== bytes) return damaged(hostJobsWords('hasAnotherSize', { name }));
    if (/\.json$/i.test(name) && bytes > textLimit) return failure('too-large', { name });
    if (bytes > 1024 ** 2 && bytes > entry.compressedSize * ratioLimit)
      return damaged(hostJobsWords('unpacksFarMore', { name }));
  }
  return success(null);
}

async function checkSwim(manifest: BundleManifest, into: string): Promise<Result<Unpacked>> {
  const parsed = parseSwim(await readFile(path.join(into, 'swim.json'), 'utf8'));
  if (!parsed.ok)
    return faultFailure(
      parsed.fault,
      { damaged: 'swim-damaged', newer: 'swim-newer-version' },
      hostJobsWords('swimBundle'),
    );
  const swim = parsed.value;
  const { place, fingerprint } = swim.clip;
  if (swim.id !== manifest.swimId) return damaged(hostJobsWords('itsSwimAnother'));
  if (place.kind !== 'inside' || !manifest.files.some(({ name }) => name === place.name))
    return damaged(hostJobsWords('itsClipNot'));
  if (!sameFingerprint(await fingerprintOf(path.join(into, place.name)), fingerprint))
    return damaged(hostJobsWords('itsClipNotOne'));
  return success({ swim, manifest });
}

async function listEntries(file: yauzl.ZipFile): Promise<Result<readonly yauzl.Entry[]>> {
  if (file.entryCount > entryLimit) return damaged(hostJobsWords('holdsMoreFiles'));
  const entries: yauzl.Entry[] = [];
  await new Promise<void>((resolve, reject) => {
    file.on('entry', (entry: yauzl.Entry) => {
      entries.push(entry);
      if (entries.length > entryLimit) reject(new Error('it holds more files than a swim has'));
      else file.readEntry();
    });
    file.on('end', resolve);
    file.on('error', reject);
    file.readEntry();
  });
  const fileType = (entry: yauzl.Entry): number => (entry.externalFileAttributes >>> 16) & 0o170000;
  // a link or a device is no file; made elsewhere than on Unix, the type is left out
  if (entries.some((entry) => ![0, 0o100000].includes(fileType(entry))))
    return damaged(hostJobsWords('holdsSomethingNo'));
  if (entries.some((entry) => entry.isEncrypted())) return damaged(hostJobsWords('lockedPassword'));
  if (new Set(entries.map((entry) => entry.fileName)).size !== entries.length)
    return damaged(hostJobsWords('namesFileTwice'));
  return success(entries);
}

function openZip(zip: string): Promise<yauzl.ZipFile> {
  return new Promise((resolve, reject) => {
    yauzl.open(
      zip,
      { lazyEntries: true, autoClose: false, validateEntrySizes: true, strictFileNames: true },
      (error, file) => (error ? reject(error) : resolve(file)),
    );
  });
}

function openEntry(file: yauzl.ZipFile, entry: yauzl.Entry): Promise<NodeJS.ReadableStream> {
  return new Promise((resolve, reject) => {
    file.openReadStream(entry, (error, stream) => (error ? reject(error) : resolve(stream)));
  });
}

async function chunksOf(file: yauzl.ZipFile, entry: yauzl.Entry, limit: number): Promise<Buffer[]> {
  const chunks: Buffer[] = [];
  const stream = (await openEntry(file, entry)).pipe(atMost(limit));
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  return chunks;
}

/** Lets so many bytes through and fails on the next. */
function atMost(limit: number): Transform {
  let seen = 0;
  return new Transform({
    transform(chunk: Buffer, _encoding, done) {
      seen += chunk.length;
      if (seen > limit) done(new Error('a file in it is longer than it says'));
      else done(null, chunk);
    },
  });
}

const isFileError = (error: unknown): boolean =>
  /^E[A-Z0-9]+$/.test((error as NodeJS.ErrnoException | null)?.code ?? '');

const wordsOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).slice(0, 300);
