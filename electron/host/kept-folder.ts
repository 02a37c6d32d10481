import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { KeptProblem } from '#core/host-contract/operations/kept-problem';
import type { Author, Lineage } from '#core/host-contract/operations/lineage';
import type { Parsed } from '#core/swim-file/parse-file';
import { idSchema } from '#core/swim-file/swim-schema';
import type { Disk } from '../disk/atomic-file';
import { fileFailure } from '../disk/file-errors';
import { KeptFile } from './kept-file';
import { moveWhole } from './move-whole';
import { hostJobsWords } from '#core/words/host-jobs';

export interface Kept<T> {
  readonly value: T;
  readonly revision: string;
}

interface Known<T> extends Kept<T> {
  readonly stamp: string;
  readonly recovered: boolean;
}

const codes = { damaged: 'file-damaged', newer: 'file-newer-version' } as const;

/**
 * A folder of the library with one JSON file a document, named by its id: practices, trials. Each is kept as a swim's
 * file is: written whole over the revision last read, with generations and conflict copies beside it. Removed ones wait
 * in the folder's own bin.
 */
export class KeptFolder<T extends { readonly id: string }> {
  private readonly file: KeptFile<T>;
  /** What was read, by id, good while the file's time and size stand. */
  private readonly known = new Map<string, Known<T>>();

  constructor(
    private readonly folder: string,
    disk: Disk,
    parse: (text: string) => Parsed<T>,
    private readonly serialise: (value: T) => string,
  ) {
    this.file = new KeptFile(disk, parse, codes);
  }

  private fileOf(id: string): string {
    return path.join(this.folder, `${id}.json`);
  }

  async list(): Promise<Result<{ kept: readonly Kept<T>[]; problems: KeptProblem[] }>> {
    let names: string[];
    try {
      names = (await readdir(this.folder)).filter((name) => name.endsWith('.json'));
    } catch (error) {
      const failed = fileFailure(error, path.basename(this.folder), 'reading');
      // a library of an earlier build has no such folder until something is put into it
      return !failed.ok && failed.error.code === 'not-found' ? success({ kept: [], problems: [] }) : failed;
    }
    const kept: Kept<T>[] = [];
    const problems: KeptProblem[] = [];
    for (const name of names) {
      const id = name.slice(0, -'.json'.length);
      // copies that were kept aside have a dot in their name, and ids have none
      if (!idSchema.safeParse(id).success) continue;
      const read = await this.look(id);
      if (read.ok) {
        kept.push({ value: read.value.value, revision: read.value.revision });
        if (read.value.recovered)
          problems.push({ name, code: 'file-damaged', detail: { name, recovered: 1 } });
      } else if (read.error.code === 'file-damaged' || read.error.code === 'file-newer-version')
        problems.push({ name, code: read.error.code, detail: read.error.detail });
      else if (read.error.code !== 'not-found')
        problems.push({ name, code: 'cannot-read', detail: read.error.detail });
    }
    return success({ kept, problems });
  }

  private async look(id: string): Promise<Result<Known<T>>> {
    await this.file.quiet(this.fileOf(id));
    let stamp: string;
    try {
      const facts = await stat(this.fileOf(id));
      stamp = `${facts.mtimeMs}:${facts.size}:${facts.ino}`;
    } catch (error) {
      return fileFailure(error, `${id}.json`, 'reading');
    }
    const known = this.known.get(id);
    if (known?.stamp === stamp) return success(known);
    const read = await this.file.read(this.fileOf(id));
    if (!read.ok) return read;
    if (read.value.value.id !== id)
      return failure('file-damaged', {
        name: `${id}.json`,
        where: 'id',
        what: hostJobsWords('notFilesName'),
      });
    const fresh: Known<T> = { ...read.value, stamp };
    this.known.set(id, fresh);
    return success(fresh);
  }

  async read(id: string): Promise<Result<Kept<T> & { written: Author[] }>> {
    const read = await this.look(id);
    if (!read.ok) return read;
    const { value, revision } = read.value;
    return success({ value, revision, written: await this.file.written(this.fileOf(id), revision) });
  }

  write(value: T, base: string | null, lineage?: Lineage): Promise<Result<{ revision: string }>> {
    return this.file.write(this.fileOf(value.id), this.serialise(value), base, lineage);
  }

  remove(id: string): Promise<Result<Record<string, never>>> {
    return moveWhole(this.fileOf(id), path.join(this.folder, '.bin', `${id}.json`));
  }

  restore(id: string): Promise<Result<Record<string, never>>> {
    return moveWhole(path.join(this.folder, '.bin', `${id}.json`), this.fileOf(id));
  }
}
