import { mkdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { failure, type HostErrorCode, type Result, success } from '#core/host-contract/host-error';
import { type Author, holds, type Lineage, superseded } from '#core/host-contract/operations/lineage';
import type { FileFault, Parsed } from '#core/swim-file/parse-file';
import { type Disk, generations, keepGeneration, revisionOf, sweepDrafts } from '../disk/atomic-file';
import { fileFailure } from '../disk/file-errors';
import { noteWrite, readWriters, settleWriters } from './file-writers';
import { hostJobsWords } from '#core/words/host-jobs';

interface Codes {
  readonly damaged: HostErrorCode;
  readonly newer: HostErrorCode;
}

export function faultFailure(fault: FileFault, codes: Codes, name: string): Result<never> {
  switch (fault.code) {
    case 'newer-version':
      return failure(codes.newer, { name, needs: fault.needs, known: fault.known });
    case 'damaged':
      return failure(codes.damaged, { name, where: fault.where, what: fault.what });
    case 'not-json':
      return failure(codes.damaged, { name, where: hostJobsWords('file'), what: hostJobsWords('notJson') });
    case 'other-format':
      return failure(codes.damaged, {
        name,
        where: 'format',
        what: hostJobsWords('not', { expected: fault.expected }),
      });
  }
}

/**
 * One JSON file of the library that is read with its revision and written whole, only over the revision last read.
 * A damaged file is replaced in reading by its newest good generation, and that is said.
 */
export class KeptFile<T> {
  /** Files whose leftovers of a killed program were removed. */
  private readonly swept = new Set<string>();
  /** Writes to one file wait for each other: a read-compare-rename must not interleave with its twin. */
  private readonly queue = new Map<string, Promise<unknown>>();

  constructor(
    private readonly disk: Disk,
    private readonly parse: (text: string) => Parsed<T>,
    private readonly codes: Codes,
  ) {}

  async read(file: string): Promise<Result<{ value: T; revision: string; recovered: boolean }>> {
    const name = path.basename(file);
    await this.quiet(file);
    let text: string;
    try {
      text = await this.disk.readText(file);
    } catch (error) {
      return fileFailure(error, name, 'reading');
    }
    const parsed = this.parse(text);
    if (parsed.ok) return success({ value: parsed.value, revision: revisionOf(text), recovered: false });
    if (parsed.fault.code === 'newer-version') return faultFailure(parsed.fault, this.codes, name);
    for (const older of await generations(file)) {
      const good = this.parse(older);
      if (good.ok) return success({ value: good.value, revision: revisionOf(text), recovered: true });
    }
    return faultFailure(parsed.fault, this.codes, name);
  }

  /**
   * Resolves when what is being written to a file has been. A window that ended may have a write under way: who reads
   * before it lands would work on what is about to be old.
   */
  async quiet(file: string): Promise<void> {
    await this.queue.get(file);
  }

  /** A file that need not exist: `empty` and no revision when it doesn't. */
  async readOr(
    file: string,
    empty: T,
  ): Promise<Result<{ value: T; revision: string | null; recovered: boolean }>> {
    const read = await this.read(file);
    if (read.ok || read.error.code !== 'not-found') return read;
    return success({ value: empty, revision: null, recovered: false });
  }

  /** Whose work is known to be in the file while it has this revision. */
  async written(file: string, revision: string): Promise<Author[]> {
    return settleWriters(await readWriters(file), revision).landed;
  }

  /**
   * `base` null: the file must not exist yet. Another file than `base` is written over only when by `lineage` it is an
   * ancestor of the text: a write of the same work whose answer never arrived. Else it is a conflict, and the caller's
   * text is kept beside it as `<stem>.conflict-…`; a damaged text that is written over is kept as `<stem>.damaged-…`.
   */
  write(
    file: string,
    text: string,
    base: string | null,
    lineage?: Lineage,
  ): Promise<Result<{ revision: string }>> {
    const job = (this.queue.get(file) ?? Promise.resolve()).then(() =>
      this.writeNow(file, text, base, lineage),
    );
    const settled = job.then(
      () => undefined,
      () => undefined,
    );
    this.queue.set(file, settled);
    void settled.then(() => {
      if (this.queue.get(file) === settled) this.queue.delete(file);
    });
    return job;
  }

  private async writeNow(
    file: string,
    text: string,
    base: string | null,
    lineage: Lineage | undefined,
  ): Promise<Result<{ revision: string }>> {
    const name = path.basename(file);
    let before: string | null = null;
    try {
      before = await this.disk.readText(file);
    } catch (error) {
      const failed = fileFailure(error, name, 'writing');
      if (failed.ok || failed.error.code !== 'not-found') return failed;
    }
    const revision = revisionOf(text);
    const current = before === null ? null : revisionOf(before);
    if (current === revision) return success({ revision });
    try {
      const { name: stem, ext } = path.parse(file);
      const writers = settleWriters(await readWriters(file), current);
      const besides = (of: string): string => `${stem}.conflict-${of.slice(0, 8)}${ext}`;
      const writersOwn = lineage && besides(revisionOf(lineage.writer));
      const grown = lineage && writers.last && holds(lineage, writers.last);
      if (current !== base && !grown) {
        // a late write of a window whose later work is on disk already has nothing that would be lost
        if (lineage && superseded(writers.landed, lineage)) return failure('conflict', { name });
        const kept = writersOwn ?? besides(revision);
        await this.disk.writeWhole(path.join(path.dirname(file), kept), text);
        return failure('conflict', { name, kept });
      }
      await mkdir(path.dirname(file), { recursive: true });
      if (!this.swept.has(file)) await sweepDrafts(file);
      this.swept.add(file);
      if (before !== null && this.parse(before).ok) await keepGeneration(file, before);
      else if (before !== null && current !== null) {
        const aside = `${stem}.damaged-${current.slice(0, 8)}${ext}`;
        await this.disk.writeWhole(path.join(path.dirname(file), aside), before);
      }
      await noteWrite(file, writers, revision, lineage);
      await this.disk.writeWhole(file, text);
      // what this writer had kept beside the file has grown into it
      if (writersOwn) await rm(path.join(path.dirname(file), writersOwn), { force: true });
    } catch (error) {
      return fileFailure(error, name, 'writing');
    }
    return success({ revision });
  }
}
