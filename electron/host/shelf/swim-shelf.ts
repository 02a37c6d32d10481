import { readdir } from 'node:fs/promises';
import path from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { type Result, success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { Lineage } from '#core/host-contract/operations/lineage';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { serialiseSwim } from '#core/swim-file/swim-file';
import type { Clip, Swim } from '#core/swim-file/swim-schema';
import type { Disk } from '../../disk/atomic-file';
import { fileFailure } from '../../disk/file-errors';
import { inParallel } from '../in-parallel';
import type { LibraryFolder } from '../library-folder';
import { moveWhole } from '../move-whole';
import { type Indexed, ShelfIndex } from './shelf-index';
import { type ClipStatus, SwimFolders } from './swim-folders';
import { SwimsBeingRead } from './swims-being-read';

type Problem = OperationOutput<'library/open'>['problems'][number];

interface Listed {
  swims: SwimSummary[];
  problems: Problem[];
  /** Swims of which nothing is known yet. */
  pending: number;
  /** Swims among `swims` whose readings are still being worked out. */
  readingsPending: number;
  /** Whether each swim was looked at on disk, not only remembered. */
  checked: boolean;
}

export interface ListOptions {
  /** Milliseconds to wait for swims that have to be read; then the answer says how many are still to come. */
  readonly patience?: number;
  /** Only so many from the top of the shelf. */
  readonly atMost?: number | undefined;
  /** What the index remembers is told without a look at the disk: at once, and perhaps out of date. */
  readonly remembered?: boolean;
}

/** Folders looked into at once; more makes no disk quicker. Our default. */
const looksAtATime = 48;

function patient(milliseconds: number): Promise<void> {
  return Number.isFinite(milliseconds)
    ? new Promise((resolve) => setTimeout(resolve, milliseconds))
    : new Promise(() => undefined);
}

/** The swims of a library: one folder each, files are the truth. */
export class SwimShelf {
  private readonly folders: SwimFolders;
  private readonly index: ShelfIndex;
  private readonly reading: SwimsBeingRead;

  constructor(
    private readonly folder: LibraryFolder,
    disk: Disk,
    readingThread: URL | null = null,
  ) {
    this.folders = new SwimFolders(folder, disk);
    this.index = new ShelfIndex(folder.cache);
    this.reading = new SwimsBeingRead(this.folders, folder.root, readingThread, (id, entry) =>
      this.index.set(id, entry),
    );
  }

  folderOf(id: string): string {
    return this.folders.folderOf(id);
  }

  swimFile(id: string): string {
    return this.folders.swimFile(id);
  }

  /** Forgets the index, so that every swim is read anew. */
  forget(): void {
    this.index.forget();
  }

  /** Reads the index, and begins with the swims it doesn't know, before a window asks: it takes its time to open. */
  async warm(): Promise<void> {
    await this.list({ patience: 0, remembered: true });
  }

  /** Stops reading, and writes the index that waits to be written. */
  async close(): Promise<void> {
    await this.reading.close();
    await this.index.save();
  }

  /** Every swim of the library. Those the index doesn't know are read. */
  async list({
    patience = Number.POSITIVE_INFINITY,
    atMost,
    remembered = false,
  }: ListOptions = {}): Promise<Result<Listed>> {
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
    const known = remembered ? await this.remember(names) : await this.lookAt(names);
    const strange = names.filter((_, i) => known[i] === null);
    const read = new Map<string, Result<Indexed>>();
    const reading = Promise.all(
      this.reading.read(strange).map(async (answer, i) => read.set(strange[i] as string, await answer)),
    );
    await Promise.race([reading, patient(patience)]);
    const swims: SwimSummary[] = [];
    const problems: Problem[] = [];
    let pending = left;
    let readingsPending = 0;
    names.forEach((name, i) => {
      const summary = known[i] ?? read.get(name);
      const glance = summary ? undefined : this.reading.glanceOf(name);
      if (glance) {
        swims.push(glance);
        readingsPending += 1;
      } else if (!summary) pending += 1;
      else if (summary.ok) {
        swims.push(summary.value.summary);
        if (summary.value.recovered)
          problems.push({ folder: name, code: 'swim-damaged', detail: { name: 'swim.json', recovered: 1 } });
      } else if (summary.error.code === 'swim-newer-version' || summary.error.code === 'swim-damaged')
        problems.push({ folder: name, code: summary.error.code, detail: summary.error.detail });
      else problems.push({ folder: name, code: 'cannot-read', detail: summary.error.detail });
    });
    return success({ swims, problems, pending, readingsPending, checked: !remembered });
  }

  private async remember(names: readonly string[]): Promise<(Result<Indexed> | null)[]> {
    const index = await this.index.all();
    return names.map((name) => {
      const entry = index.get(name);
      return entry ? success(entry) : null;
    });
  }

  private async lookAt(names: readonly string[]): Promise<(Result<Indexed> | null)[]> {
    const index = await this.index.all();
    const coachStamp = await this.folders.coachStamp();
    return inParallel(names, looksAtATime, async (name) => {
      const entry = index.get(name);
      return entry ? this.folders.look(name, entry, coachStamp) : null;
    });
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

  async read(id: string): Promise<Result<OperationOutput<'swim/read'>>> {
    const read = await this.folders.file.read(this.swimFile(id));
    if (!read.ok) return read;
    const { value: swim, revision } = read.value;
    const written = await this.folders.file.written(this.swimFile(id), revision);
    return success({ swim, revision, written, clipStatus: await this.clipStatus(id, swim.clip) });
  }

  write(swim: Swim, base: string | null, lineage?: Lineage): Promise<Result<{ revision: string }>> {
    return this.folders.file.write(this.swimFile(swim.id), serialiseSwim(swim), base, lineage);
  }

  /** The file of a swim's clip when it is there and still the one the marks were made on, else null. */
  async presentClip(id: string): Promise<string | null> {
    const clip = await this.clipOf(id);
    if (!clip.ok || (await this.clipStatus(id, clip.value)) !== 'present') return null;
    return this.clipPath(id, clip.value);
  }

  /** What a swim's file says of its clip. */
  clipOf(id: string): Promise<Result<Clip>> {
    return this.folders.clipOf(id);
  }

  /** Whether a swim's clip is there now, and still the one the marks were made on. */
  async lookAtClip(id: string): Promise<Result<OperationOutput<'swim/clip-status'>>> {
    const clip = await this.clipOf(id);
    return clip.ok ? success({ clipStatus: await this.clipStatus(id, clip.value) }) : clip;
  }

  /** Where a swim's clip is, whether or not it is there; null when its name would leave the folder. */
  clipPath(id: string, clip: Pick<Clip, 'place'>): Promise<string | null> {
    return this.folders.clipPath(id, clip);
  }

  clipStatus(id: string, clip: Clip): Promise<ClipStatus> {
    return this.folders.clipStatus(id, clip);
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
