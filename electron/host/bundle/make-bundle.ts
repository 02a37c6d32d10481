import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import { type BundleManifest, bundleVersion, manifestName } from '#core/bundle/bundle-manifest';
import { exportName } from '#core/exporting/export-name';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { serialiseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { plainName } from '../../disk/contained-path';
import { draftName } from '../../disk/drafts';
import { fileFailure } from '../../disk/file-errors';
import { linkUnderFreeName } from '../../disk/free-name';
import { isAbort } from '../../disk/is-abort';
import type { JobReport } from '../jobs';
import { hostJobsWords } from '#core/words/host-jobs';

interface Options {
  readonly swim: Swim;
  /** The clip on disk. */
  readonly clip: string;
  readonly swimFolder: string;
  readonly into: string;
  readonly tempId: string;
  readonly madeAt: Date;
  readonly signal: AbortSignal;
  readonly report: JobReport;
}

/** Files of a swim's folder that go along when they are there. */
const along = ['thumb.jpg', 'handout.json'] as const;

/**
 * Packs a swim as one zip: its marks, its clip (also one that lies outside the library), its thumbnail and handout, and a
 * manifest with the SHA-256 of each. The zip bears its own name only once it is whole.
 */
export async function makeBundle(options: Options): Promise<Result<{ name: string; path: string }>> {
  const { swim, clip, swimFolder, into, tempId, madeAt, signal, report } = options;
  const clipName = clipNameInBundle(swim);
  const packed: Swim = { ...swim, clip: { ...swim.clip, place: { kind: 'inside', name: clipName } } };
  const marks = Buffer.from(serialiseSwim(packed));
  const temp = path.join(into, `.${draftName(tempId)}`);
  try {
    report(null, hostJobsWords('readingClip'));
    const clipBytes = (await stat(clip)).size;
    const files: BundleManifest['files'] = [
      { name: 'swim.json', bytes: marks.length, sha256: sha256(marks) },
      { name: clipName, bytes: clipBytes, sha256: await sha256OfFile(clip, signal) },
    ];
    const small: { name: string; bytes: Buffer }[] = [];
    for (const name of along) {
      const bytes = await readFile(path.join(swimFolder, name)).catch((error: NodeJS.ErrnoException) => {
        if (error.code === 'ENOENT') return null;
        throw error;
      });
      if (!bytes) continue;
      small.push({ name, bytes });
      files.push({ name, bytes: bytes.length, sha256: sha256(bytes) });
    }
    const manifest: BundleManifest = {
      format: 'submark-bundle',
      version: bundleVersion,
      madeAt: madeAt.toISOString(),
      swimId: swim.id,
      files,
    };
    const zip = new ZipFile();
    const facts = { mtime: madeAt, mode: 0o100644 };
    zip.addBuffer(Buffer.from(JSON.stringify(manifest, null, 2)), manifestName, facts);
    zip.addBuffer(marks, 'swim.json', facts);
    for (const { name, bytes } of small) zip.addBuffer(bytes, name, facts);
    // film is compressed already
    zip.addFile(clip, clipName, { ...facts, compress: false });
    zip.end();
    let written = 0;
    zip.outputStream.on('data', (chunk: Buffer) => {
      written += chunk.length;
      report(Math.min(1, written / (clipBytes + marks.length)), hostJobsWords('packingClip'));
    });
    // the zip reads the clip itself, and tells trouble on its own emitter
    const trouble = new Promise<never>((_, reject) => {
      zip.on('error', reject);
    });
    await Promise.race([
      pipeline(zip.outputStream, createWriteStream(temp, { flags: 'wx', flush: true }), { signal }),
      trouble,
    ]);
    const wanted = exportName(swim.card, [swim.card.drill || swim.card.stroke, 'swim'], 'zip');
    return success(await linkUnderFreeName(into, wanted, temp));
  } catch (error) {
    if (signal.aborted && isAbort(error)) return failure('cancelled');
    return fileFailure(error, swim.clip.originalName, 'writing');
  } finally {
    await rm(temp, { force: true });
  }
}

/** The clip's own name, kept clear of the bundle's other files. */
function clipNameInBundle({ clip }: Swim): string {
  const name = plainName(clip.place.kind === 'inside' ? clip.place.name : clip.originalName);
  return ['swim.json', manifestName, ...along].includes(name.toLowerCase()) ? `clip-${name}` : name;
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

async function sha256OfFile(file: string, signal: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(file), hash, { signal });
  return hash.digest('hex');
}
