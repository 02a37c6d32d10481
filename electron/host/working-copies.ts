import type { FrameRange } from '#core/timeline/frame-range';
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readdir, rename, rm, stat, utimes } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { CopiesRoom, CopyLook, Still } from '#core/host-contract/operations/media-operations';
import type { Clip } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { pieceFile } from '../media/copy-pieces';
import { type KnownFilm, knowFilm } from '../media/known-film';
import { makeWorkingCopy } from '../media/make-working-copy';
import { readStills } from '../media/read-stills';
import { flushFile } from '../disk/atomic-file';
import type { Disk } from '../disk/atomic-file';
import { readCopiesLimit, writeCopiesLimit } from './copies-limit';
import { CopyInMaking } from './copy-in-making';
import { draftName } from '../disk/drafts';
import { fileFailure } from '../disk/file-errors';
import type { Jobs } from './jobs';
import type { LibraryFolder } from './library-folder';
import type { SwimShelf } from './shelf/swim-shelf';
import { hostJobsWords } from '#core/words/host-jobs';

/** Changes when copies are made otherwise, so that old ones are made again. */
const recipe = 1;
/** Our default, until the coach chooses: about five hours of 1080p film. */
export const defaultCopiesLimit = 20e9;
const ending = '.film';
/** Films whose list of frames is kept in mind: those on the two sides of a pair, and the two before. */
const filmsKnown = 4;

/**
 * The cache of working copies. A copy is named after its swim and after everything its pictures depend on, the
 * original's fingerprint first: it can never stand in for another film. The least lately used go when all together are
 * larger than the limit.
 */
export class WorkingCopies {
  /** Copies under way, by swim. */
  private readonly making = new Map<string, CopyInMaking>();
  /** Films of which stills were wanted lately, by their file as it was. */
  private readonly known = new Map<string, Promise<Result<KnownFilm>>>();

  constructor(
    private readonly folder: LibraryFolder,
    private readonly shelf: SwimShelf,
    private readonly jobs: Jobs,
    private readonly disk: Disk,
    /** Where the coach chose nothing. */
    private readonly usualLimitBytes: number,
  ) {}

  /** The swim's copy, or null; it then counts as lately used. */
  async fileOf(id: string): Promise<string | null> {
    const file = await this.place(id);
    if (!file.ok || (await sizeOf(file.value)) === null) return null;
    const now = new Date();
    await utimes(file.value, now, now).catch(onlyFileTrouble);
    return file.value;
  }

  async look(id: string): Promise<Result<CopyLook>> {
    const making = this.making.get(id);
    if (making) return success({ state: 'making', jobId: making.jobId });
    const file = await this.place(id);
    if (!file.ok) return file;
    const bytes = await sizeOf(file.value);
    return success(bytes === null ? { state: 'none' } : { state: 'ready', bytes });
  }

  async make(id: string, frame: number): Promise<Result<{ jobId: string }>> {
    const file = await this.place(id);
    if (!file.ok) return file;
    const already = this.making.get(id);
    if (already) {
      already.lookAt(frame);
      return success({ jobId: already.jobId });
    }
    // a name of its own each time: an ffmpeg that outlived a killed host may still write to the last one
    const draft = `${file.value}.${draftName(randomUUID(), '')}`;
    const jobId = this.jobs.start(async (signal, report) => {
      try {
        return await this.build(id, file.value, making, signal, report);
      } finally {
        this.making.delete(id);
      }
    });
    const making = new CopyInMaking(jobId, draft, frame);
    this.making.set(id, making);
    return success({ jobId });
  }

  /** Pieces of a copy under way that can be shown; `frame` is where the coach looks, which is made first. */
  watch(id: string, frame: number): FrameRange[] {
    const making = this.making.get(id);
    making?.lookAt(frame);
    return [...(making?.pieces ?? [])];
  }

  /** File of the piece that begins with a frame, or null when there is none. */
  pieceOf(id: string, first: number): string | null {
    const making = this.making.get(id);
    return making?.pieces.some((piece) => piece.first === first) ? pieceFile(making.folder, first) : null;
  }

  /** Frames of the clip itself, for the moment before the copy has them. `scratch` may be written for a moment. */
  async stills(
    id: string,
    { first, last }: FrameRange,
    asked: number,
    scratch: string,
  ): Promise<Result<readonly Still[]>> {
    const original = await this.original(id);
    if (!original.ok) return original;
    const { file, clip } = original.value;
    const end = Math.min(last, tableFromRecord(clip.frameTimes).starts.length - 1);
    if (asked > end) return failure('not-found', { name: hostJobsWords('frame', { asked: asked + 1 }) });
    const known = await this.knownFilm(file, clip);
    if (!known.ok) return known;
    const frames = Array.from({ length: end - first + 1 }, (_, n) => first + n);
    return readStills(known.value, frames, asked, scratch);
  }

  /** A clip's frames in its file: found once, as long as the file is the same. */
  private async knownFilm(file: string, clip: Clip, signal?: AbortSignal): Promise<Result<KnownFilm>> {
    const facts = await stat(file).catch(onlyFileTrouble);
    const key = JSON.stringify([file, facts?.size, facts?.mtimeMs, clip.track, clip.fields]);
    const before = this.known.get(key);
    if (before) return before;
    const finding = knowFilm(file, clip, signal ? { signal } : {});
    this.known.set(key, finding);
    const found = await finding;
    if (!found.ok) this.known.delete(key);
    for (const oldest of [...this.known.keys()].slice(0, -filmsKnown)) this.known.delete(oldest);
    return found;
  }

  /** What all copies take, and the most they may. */
  async room(): Promise<CopiesRoom> {
    const all = await this.list();
    const bytes = all.reduce((sum, each) => sum + each.bytes, 0);
    return { files: all.length, bytes, limitBytes: await this.limit() };
  }

  async setLimit(limitBytes: number): Promise<Result<CopiesRoom>> {
    try {
      await writeCopiesLimit(this.disk, this.folder.settings, limitBytes);
      await this.keepWithin(null);
    } catch (error) {
      return fileFailure(error, 'settings.json', 'writing');
    }
    return success(await this.room());
  }

  private async limit(): Promise<number> {
    return (await readCopiesLimit(this.disk, this.folder.settings)) ?? this.usualLimitBytes;
  }

  private async build(
    id: string,
    file: string,
    making: CopyInMaking,
    signal: AbortSignal,
    report: (share: number | null, words: string) => void,
  ): Promise<Result<{ bytes: number }>> {
    const ready = await sizeOf(file);
    if (ready !== null) return success({ bytes: ready });
    const original = await this.original(id);
    if (!original.ok) return original;
    const { clip } = original.value;
    const name = clip.originalName;
    try {
      // the cache may have been emptied
      await mkdir(this.folder.copies, { recursive: true });
      report(null, hostJobsWords('findingEveryFrame'));
      const known = await this.knownFilm(original.value.file, clip, signal);
      const made = known.ok
        ? await makeWorkingCopy({
            known: known.value,
            target: making.draft,
            pieces: making.folder,
            table: tableFromRecord(clip.frameTimes),
            focus: making,
            onPiece: (piece) => making.add(piece),
            signal,
            report,
          })
        : known;
      if (!made.ok) return { ok: false, error: { ...made.error, detail: { ...made.error.detail, name } } };
      // the file may have been exchanged while it was being read
      const still = await this.original(id);
      if (!still.ok) return still;
      await flushFile(making.draft);
      await rename(making.draft, file);
    } catch (error) {
      return fileFailure(error, name, 'writing');
    } finally {
      await rm(making.draft, { force: true });
    }
    await this.keepWithin(file);
    return success({ bytes: (await sizeOf(file)) ?? 0 });
  }

  /** The file of a swim's clip, when it is still the one the marks were made on. */
  async originalFile(id: string): Promise<Result<string>> {
    const original = await this.original(id);
    return original.ok ? success(original.value.file) : original;
  }

  /** Where the clip is, when it is still the one the marks were made on. */
  private async original(id: string): Promise<Result<{ file: string; clip: Clip }>> {
    const read = await this.shelf.read(id);
    if (!read.ok) return read;
    const { clip } = read.value.swim;
    if (read.value.clipStatus === 'changed') return failure('clip-changed', { name: clip.originalName });
    const file = read.value.clipStatus === 'present' ? await this.shelf.clipPath(id, clip) : null;
    return file === null ? failure('clip-missing', { name: clip.originalName }) : success({ file, clip });
  }

  /** Lets the least lately used copies go; the newest stays whatever its size. */
  private async keepWithin(newest: string | null): Promise<void> {
    const limit = await this.limit();
    const all = (await this.list()).sort((a, b) => a.usedMs - b.usedMs);
    let bytes = all.reduce((sum, each) => sum + each.bytes, 0);
    for (const each of all) {
      if (bytes <= limit) return;
      if (each.file === newest) continue;
      await rm(each.file, { force: true });
      bytes -= each.bytes;
    }
  }

  private async list(): Promise<{ file: string; bytes: number; usedMs: number }[]> {
    const names = await readdir(this.folder.copies).catch((error) => {
      onlyFileTrouble(error);
      return [] as string[];
    });
    const found: { file: string; bytes: number; usedMs: number }[] = [];
    for (const name of names.filter((each) => each.endsWith(ending))) {
      const file = path.join(this.folder.copies, name);
      const facts = await stat(file).catch(onlyFileTrouble);
      if (facts) found.push({ file, bytes: facts.size, usedMs: facts.mtimeMs });
    }
    return found;
  }

  /** Where the swim's copy belongs. What its name is made of never changes, and is asked for with every range. */
  private async place(id: string): Promise<Result<string>> {
    const known = this.places.get(id);
    if (known !== undefined) return success(known);
    const clip = await this.shelf.clipOf(id);
    if (!clip.ok) return clip;
    const file = path.join(this.folder.copies, `${id}.${nameOf(clip.value)}${ending}`);
    this.places.set(id, file);
    return success(file);
  }
  private readonly places = new Map<string, string>();
}

function nameOf({ fingerprint, track, fields }: Clip): string {
  const hash = createHash('sha256');
  hash.update(JSON.stringify([recipe, fingerprint.bytes, fingerprint.edgesSha256, track ?? 1, fields]));
  return hash.digest('hex').slice(0, 16);
}

async function sizeOf(file: string): Promise<number | null> {
  const facts = await stat(file).catch(onlyFileTrouble);
  return facts?.size ?? null;
}

/** A cache that can't be read is an empty one; anything else is a bug. */
function onlyFileTrouble(error: unknown): null {
  fileFailure(error, hostJobsWords('workingCopy'), 'reading');
  return null;
}
