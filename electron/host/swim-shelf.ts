import { mkdir, readdir, rename, stat } from 'node:fs/promises';
import path from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Clip, Swim } from '#core/swim-file/swim-schema';
import type { Disk } from './atomic-file';
import { containedPath } from './contained-path';
import { fileFailure } from './file-errors';
import { KnownFingerprints, sameFingerprint } from './fingerprint';
import { KeptFile } from './kept-file';
import type { LibraryFolder } from './library-folder';
import { summariseSwim } from './summarise-swim';

type Problem = OperationOutput<'library/open'>['problems'][number];

interface Known {
  readonly stamp: string;
  readonly summary: SwimSummary;
  readonly clip: Clip;
  /** The file is damaged and its newest good generation stands in. */
  readonly recovered: boolean;
}

const swimCodes = { damaged: 'swim-damaged', newer: 'swim-newer-version' } as const;

/** The swims of a library: one folder each, files are the truth. */
export class SwimShelf {
  private readonly file: KeptFile<Swim>;
  /** Summaries by swim file, good while its time and size stand. */
  private readonly summaries = new Map<string, Known>();
  private readonly fingerprints = new KnownFingerprints();

  constructor(
    private readonly folder: LibraryFolder,
    disk: Disk,
  ) {
    this.file = new KeptFile(disk, parseSwim, swimCodes);
  }

  folderOf(id: string): string {
    return path.join(this.folder.swims, id);
  }

  private swimFile(id: string): string {
    return path.join(this.folderOf(id), 'swim.json');
  }

  async list(): Promise<Result<{ swims: SwimSummary[]; problems: Problem[] }>> {
    let names: string[];
    try {
      const entries = await readdir(this.folder.swims, { withFileTypes: true });
      names = entries.filter((each) => each.isDirectory()).map((each) => each.name);
    } catch (error) {
      return fileFailure(error, this.folder.swims, 'reading');
    }
    const swims: SwimSummary[] = [];
    const problems: Problem[] = [];
    for (const name of names) {
      const summary = await this.summary(name);
      if (summary.ok) {
        swims.push(summary.value.summary);
        if (summary.value.recovered)
          problems.push({ folder: name, code: 'swim-damaged', detail: { name: 'swim.json', recovered: 1 } });
      } else if (summary.error.code === 'swim-newer-version' || summary.error.code === 'swim-damaged')
        problems.push({ folder: name, code: summary.error.code, detail: summary.error.detail });
      else problems.push({ folder: name, code: 'cannot-read', detail: summary.error.detail });
    }
    return success({ swims, problems });
  }

  private async summary(id: string): Promise<Result<Known>> {
    let stamp: string;
    try {
      const facts = await stat(this.swimFile(id));
      stamp = `${facts.mtimeMs}:${facts.size}:${facts.ino}`;
    } catch (error) {
      return fileFailure(error, `${id}/swim.json`, 'reading');
    }
    const known = this.summaries.get(id);
    const read = known?.stamp === stamp ? null : await this.file.read(this.swimFile(id));
    if (read && !read.ok) return read;
    if (read?.ok && read.value.value.id !== id)
      return failure('swim-damaged', { name: id, where: 'id', what: 'is not the folder’s name' });
    const hasThumbnail = await stat(path.join(this.folderOf(id), 'thumb.jpg')).then(
      () => true,
      () => false,
    );
    const fresh = read
      ? {
          summary: summariseSwim(read.value.value, read.value.revision),
          clip: read.value.value.clip,
          recovered: read.value.recovered,
        }
      : known;
    if (!fresh) throw new Error('a summary is either known or read');
    // thumbnail and clip come and go without the swim's file changing
    const clipStatus = await this.clipStatus(id, fresh.clip);
    const now: Known = { ...fresh, stamp, summary: { ...fresh.summary, hasThumbnail, clipStatus } };
    this.summaries.set(id, now);
    return success(now);
  }

  async read(id: string): Promise<Result<OperationOutput<'swim/read'>>> {
    const read = await this.file.read(this.swimFile(id));
    if (!read.ok) return read;
    const { value: swim, revision } = read.value;
    return success({ swim, revision, clipStatus: await this.clipStatus(id, swim.clip) });
  }

  write(swim: Swim, base: string | null): Promise<Result<{ revision: string }>> {
    return this.file.write(this.swimFile(swim.id), serialiseSwim(swim), base);
  }

  /** The file of a swim's clip when it is there and still the one the marks were made on, else null. */
  async presentClip(id: string): Promise<string | null> {
    const known = await this.summary(id);
    if (!known.ok || known.value.summary.clipStatus !== 'present') return null;
    return this.clipPath(id, known.value.clip);
  }

  /** Where a swim's clip is, whether or not it is there; null when its name would leave the folder. */
  async clipPath(id: string, clip: Clip): Promise<string | null> {
    if (clip.place.kind === 'outside') return clip.place.path;
    return containedPath(this.folderOf(id), clip.place.name);
  }

  async clipStatus(id: string, clip: Clip): Promise<'present' | 'missing' | 'changed'> {
    const file = await this.clipPath(id, clip);
    if (file === null) return 'missing';
    try {
      return sameFingerprint(await this.fingerprints.of(file), clip.fingerprint) ? 'present' : 'changed';
    } catch (error) {
      fileFailure(error, clip.originalName, 'reading');
      return 'missing';
    }
  }

  async writeThumbnail(file: string, jpeg: Uint8Array): Promise<void> {
    await writeFileAtomic(file, Buffer.from(jpeg));
  }

  remove(id: string): Promise<Result<Record<string, never>>> {
    return this.move(this.folderOf(id), path.join(this.folder.bin, id));
  }

  restore(id: string): Promise<Result<Record<string, never>>> {
    return this.move(path.join(this.folder.bin, id), this.folderOf(id));
  }

  private async move(from: string, to: string): Promise<Result<Record<string, never>>> {
    const name = path.basename(from);
    try {
      await mkdir(path.dirname(to), { recursive: true });
      const taken = await stat(to).then(
        () => true,
        () => false,
      );
      if (taken) return failure('already-there', { name });
      await rename(from, to);
      return success({});
    } catch (error) {
      return fileFailure(error, name, 'writing');
    }
  }
}
