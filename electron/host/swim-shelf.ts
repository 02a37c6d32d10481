import { lstat, readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { Lineage } from '#core/host-contract/operations/lineage';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Clip, Swim } from '#core/swim-file/swim-schema';
import type { Disk } from './atomic-file';
import { CoachOnDisk } from './coach-on-disk';
import { containedPath, isPlainName } from './contained-path';
import { fileFailure } from './file-errors';
import { KnownFingerprints, sameFingerprint } from './fingerprint';
import { inParallel } from './in-parallel';
import { KeptFile } from './kept-file';
import { moveWhole } from './move-whole';
import type { LibraryFolder } from './library-folder';
import { type Indexed, ShelfIndex } from './shelf-index';
import { summariseSwim } from './summarise-swim';
import { isSwimCopy } from './swim-copies';

type Problem = OperationOutput<'library/open'>['problems'][number];

interface Listed {
  swims: SwimSummary[];
  problems: Problem[];
  /** Swims that are still being read. */
  pending: number;
}

/** Folders looked into at once; more makes no disk quicker. Our default. */
const looksAtATime = 48;

const stampOf = ({ mtimeMs, size, ino }: { mtimeMs: number; size: number; ino: number }): string =>
  `${mtimeMs}:${size}:${ino}`;

function patient(milliseconds: number): Promise<void> {
  return Number.isFinite(milliseconds)
    ? new Promise((resolve) => setTimeout(resolve, milliseconds))
    : new Promise(() => undefined);
}

/** What comes and goes beside a swim's file without changing it. */
function besideSwim(names: readonly string[]): Pick<SwimSummary, 'hasThumbnail' | 'copies'> {
  return { hasThumbnail: names.includes('thumb.jpg'), copies: names.filter(isSwimCopy).length };
}

const swimCodes = { damaged: 'swim-damaged', newer: 'swim-newer-version' } as const;

/** The swims of a library: one folder each, files are the truth. */
export class SwimShelf {
  private readonly file: KeptFile<Swim>;
  private readonly index: ShelfIndex;
  private readonly fingerprints = new KnownFingerprints();
  private readonly coach: CoachOnDisk;

  constructor(
    private readonly folder: LibraryFolder,
    disk: Disk,
  ) {
    this.file = new KeptFile(disk, parseSwim, swimCodes);
    this.index = new ShelfIndex(folder.cache);
    this.coach = new CoachOnDisk(folder.coach, disk);
  }

  folderOf(id: string): string {
    return path.join(this.folder.swims, id);
  }

  swimFile(id: string): string {
    return path.join(this.folderOf(id), 'swim.json');
  }

  /** Forgets the index, so that every swim is read anew. */
  forget(): void {
    this.index.forget();
  }

  /** Writes the index that waits to be written. */
  close(): Promise<void> {
    return this.index.save();
  }

  /**
   * Every swim of the library. Those the index doesn't know are read; `patience` milliseconds are waited for that, then
   * the answer says how many are still being read, and reading goes on. `atMost`: only the top of the shelf is looked at.
   */
  async list(patience = Number.POSITIVE_INFINITY, atMost?: number): Promise<Result<Listed>> {
    let names: string[];
    let left = 0;
    try {
      const entries = await readdir(this.folder.swims, { withFileTypes: true });
      names = entries.filter((each) => each.isDirectory()).map((each) => each.name);
    } catch (error) {
      return fileFailure(error, this.folder.swims, 'reading');
    }
    if (atMost !== undefined && names.length > atMost) {
      left = names.length - atMost;
      names = await this.topOfShelf(names, atMost);
    } else await this.index.keepOnly(new Set(names));
    const known = await inParallel(names, looksAtATime, async (name) => this.look(name));
    const strange = names.filter((_, i) => known[i] === null);
    const read = new Map<string, Result<Indexed>>();
    const reading = this.readAll(strange, read);
    await Promise.race([reading, patient(patience)]);
    const swims: SwimSummary[] = [];
    const problems: Problem[] = [];
    let pending = left;
    names.forEach((name, i) => {
      const summary = known[i] ?? read.get(name);
      if (!summary) pending += 1;
      else if (summary.ok) {
        swims.push(summary.value.summary);
        if (summary.value.recovered)
          problems.push({ folder: name, code: 'swim-damaged', detail: { name: 'swim.json', recovered: 1 } });
      } else if (summary.error.code === 'swim-newer-version' || summary.error.code === 'swim-damaged')
        problems.push({ folder: name, code: summary.error.code, detail: summary.error.detail });
      else problems.push({ folder: name, code: 'cannot-read', detail: summary.error.detail });
    });
    return success({ swims, problems, pending });
  }

  /** The swims that stand first on the shelf as far as the index knows: by swimmer's name, newest first. */
  private async topOfShelf(names: readonly string[], atMost: number): Promise<string[]> {
    const index = await this.index.all();
    const known = names.flatMap((id) => {
      const card = index.get(id)?.summary.card;
      return card ? [{ id, name: card.swimmerName.toLocaleLowerCase(), date: card.date }] : [];
    });
    if (known.length < atMost) return names.slice(0, atMost);
    known.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.date < b.date ? 1 : -1));
    return known.slice(0, atMost).map(({ id }) => id);
  }

  /** Reads swims one after the other into `answers`; ones that are already being read are waited for, not read twice. */
  private async readAll(ids: readonly string[], answers: Map<string, Result<Indexed>>): Promise<void> {
    for (const id of ids) {
      const running = this.running.get(id) ?? this.readFresh(id);
      this.running.set(id, running);
      answers.set(id, await running.finally(() => this.running.delete(id)));
    }
  }
  private readonly running = new Map<string, Promise<Result<Indexed>>>();

  /** What the index has of a swim, with what lies beside it now; null when it has to be read. */
  private async look(id: string): Promise<Result<Indexed> | null> {
    const entry = (await this.index.all()).get(id);
    if (!entry) return null;
    try {
      const [names, facts] = await Promise.all([readdir(this.folderOf(id)), stat(this.swimFile(id))]);
      if (`${stampOf(facts)} ${await this.coach.stamp()}` !== entry.stamp) return null;
      const clipStamp = await this.clipStamp(id, entry.place);
      if (clipStamp !== null && clipStamp !== entry.clipStamp) return null;
      const clipStatus = clipStamp === null ? 'missing' : entry.clipSame ? 'present' : 'changed';
      const summary = { ...entry.summary, clipStatus, ...besideSwim(names) } as const;
      return success({ ...entry, summary });
    } catch (error) {
      return fileFailure(error, `${id}/swim.json`, 'reading');
    }
  }

  private async clipStamp(id: string, place: Clip['place']): Promise<string | null> {
    try {
      if (place.kind === 'outside') return stampOf(await stat(place.path));
      const facts = await lstat(path.join(this.folderOf(id), place.name));
      if (!facts.isSymbolicLink()) return isPlainName(place.name) ? stampOf(facts) : null;
      const file = await containedPath(this.folderOf(id), place.name);
      return file === null ? null : stampOf(await stat(file));
    } catch (error) {
      fileFailure(error, id, 'reading');
      return null;
    }
  }

  private async readFresh(id: string): Promise<Result<Indexed>> {
    let stamp: string;
    let names: string[];
    try {
      stamp = `${stampOf(await stat(this.swimFile(id)))} ${await this.coach.stamp()}`;
      names = await readdir(this.folderOf(id));
    } catch (error) {
      return fileFailure(error, `${id}/swim.json`, 'reading');
    }
    const read = await this.file.read(this.swimFile(id));
    if (!read.ok) return read;
    const { value: swim, revision, recovered } = read.value;
    if (swim.id !== id)
      return failure('swim-damaged', { name: id, where: 'id', what: 'is not the folder’s name' });
    const { place } = swim.clip;
    const clipStamp = await this.clipStamp(id, place);
    const clipStatus = await this.clipStatus(id, swim.clip);
    const fresh: Indexed = {
      stamp,
      clipStamp,
      clipSame: clipStatus === 'present',
      place,
      recovered,
      summary: {
        ...summariseSwim(swim, revision, await this.coach.read()),
        clipStatus,
        ...besideSwim(names),
      },
    };
    await this.index.set(id, fresh);
    return success(fresh);
  }

  private async known(id: string): Promise<Result<Indexed>> {
    return (await this.look(id)) ?? this.readFresh(id);
  }

  async read(id: string): Promise<Result<OperationOutput<'swim/read'>>> {
    const read = await this.file.read(this.swimFile(id));
    if (!read.ok) return read;
    const { value: swim, revision } = read.value;
    const written = await this.file.written(this.swimFile(id), revision);
    return success({ swim, revision, written, clipStatus: await this.clipStatus(id, swim.clip) });
  }

  write(swim: Swim, base: string | null, lineage?: Lineage): Promise<Result<{ revision: string }>> {
    return this.file.write(this.swimFile(swim.id), serialiseSwim(swim), base, lineage);
  }

  /** The file of a swim's clip when it is there and still the one the marks were made on, else null. */
  async presentClip(id: string): Promise<string | null> {
    const known = await this.known(id);
    if (!known.ok || known.value.summary.clipStatus !== 'present') return null;
    return this.clipPath(id, known.value);
  }

  /** What a swim's file says of its clip. */
  async clipOf(id: string): Promise<Result<Clip>> {
    const read = await this.file.read(this.swimFile(id));
    return read.ok ? success(read.value.value.clip) : read;
  }

  /** Where a swim's clip is, whether or not it is there; null when its name would leave the folder. */
  async clipPath(id: string, clip: Pick<Clip, 'place'>): Promise<string | null> {
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
    return moveWhole(this.folderOf(id), path.join(this.folder.bin, id));
  }

  restore(id: string): Promise<Result<Record<string, never>>> {
    return moveWhole(path.join(this.folder.bin, id), this.folderOf(id));
  }
}
