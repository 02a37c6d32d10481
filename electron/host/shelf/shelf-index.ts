import { createHash } from 'node:crypto';
import { mkdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import writeFileAtomic from 'write-file-atomic';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Clip } from '#core/swim-file/swim-schema';
import { fileFailure } from '../../disk/file-errors';
import { thisComputer } from '../../disk/this-computer';

/** What is remembered of one swim's folder, good while the stamps stand. */
export interface Indexed {
  /** Time, size and inode of swim.json, and of the coach's file: intervals rest on both. */
  readonly stamp: string;
  /** The same of the clip when its fingerprint was taken; null: it was not there. */
  readonly clipStamp: string | null;
  /** Whether the clip with that stamp is the one the marks were made on. */
  readonly clipSame: boolean;
  readonly place: Clip['place'];
  readonly summary: SwimSummary;
  /** The file is damaged and its newest good generation stands in. */
  readonly recovered: boolean;
}

/** Milliseconds between a change and its writing. Our default: an index need not be up to date, only quick. */
const writeAfter = 400;

/** A long reading changes it all the time: at most a twentieth of the time goes into writing it. Our default. */
const writingShare = 20;

/**
 * Summaries of all swims in one file of the library's cache, so that a shelf of thousands opens without reading each.
 * The swims' files are the truth: an index that is missing, damaged, of another build (its readings may differ) or
 * stale is simply made again. One a computer, because inodes and times differ between computers that share a folder.
 */
export class ShelfIndex {
  private readonly file: string;
  private known: Promise<Map<string, Indexed>> | null = null;
  private timer: NodeJS.Timeout | null = null;
  private changed = false;
  private lastWrite = 0;

  constructor(private readonly cacheFolder: string) {
    this.file = path.join(cacheFolder, `shelf-${thisComputer}.json`);
  }

  all(): Promise<Map<string, Indexed>> {
    this.known ??= this.load();
    return this.known;
  }

  async set(id: string, entry: Indexed): Promise<void> {
    (await this.all()).set(id, entry);
    this.saveSoon();
  }

  async keepOnly(ids: ReadonlySet<string>): Promise<void> {
    const known = await this.all();
    for (const id of [...known.keys()])
      if (!ids.has(id)) {
        known.delete(id);
        this.saveSoon();
      }
  }

  /** Forgets everything; the next look reads the swims' files again. */
  forget(): void {
    this.stopTimer();
    this.changed = false;
    this.known = Promise.resolve(new Map());
  }

  private async load(): Promise<Map<string, Indexed>> {
    try {
      const text = await readFile(this.file, 'utf8');
      const lineEnd = text.indexOf('\n');
      const body = text.slice(lineEnd + 1);
      // checked as a whole: what has this seal is what this very build wrote, and it had been checked entry by entry
      if (lineEnd < 0 || text.slice(0, lineEnd) !== (await sealOf(body))) return new Map();
      return new Map(Object.entries(JSON.parse(body) as Record<string, Indexed>));
    } catch (error) {
      fileFailure(error, path.basename(this.file), 'reading');
      return new Map();
    }
  }

  private saveSoon(): void {
    this.changed = true;
    this.timer ??= setTimeout(
      () => void this.save(),
      Math.max(writeAfter, this.lastWrite * writingShare),
    ).unref();
  }

  private stopTimer(): void {
    if (this.timer) clearTimeout(this.timer);
    this.timer = null;
  }

  /** Writes what has changed. A disk that refuses makes the next opening slower, nothing else. */
  async save(): Promise<void> {
    this.stopTimer();
    if (!this.changed) return;
    this.changed = false;
    const began = performance.now();
    const body = JSON.stringify(Object.fromEntries(await this.all()));
    const text = `${await sealOf(body)}\n${body}`;
    try {
      // not recursive: a library that has gone must not come back as an empty folder
      await mkdir(this.cacheFolder).catch((error: NodeJS.ErrnoException) => {
        if (error.code !== 'EEXIST') throw error;
      });
      await writeFileAtomic(this.file, text, { fsync: false });
    } catch (error) {
      fileFailure(error, path.basename(this.file), 'writing');
    }
    this.lastWrite = performance.now() - began;
  }
}

/** First line of the file: which build wrote it, and the SHA-256 of the rest. */
async function sealOf(body: string): Promise<string> {
  return `submark-shelf-index ${await codeStamp()} ${createHash('sha256').update(body).digest('hex')}`;
}

let ownCode: Promise<string> | null = null;

/** Tells one build of the program from another: readings of the index are those of the build that made it. */
function codeStamp(): Promise<string> {
  ownCode ??= stat(fileURLToPath(import.meta.url)).then(({ mtimeMs, size }) => `${mtimeMs}:${size}`);
  return ownCode;
}
