import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { z } from 'zod';
import { type Result, success } from '#core/host-contract/host-error';
import { memoryKeySchema, memoryTextSchema } from '#core/host-contract/operations/memory-operations';
import type { Disk } from '../disk/atomic-file';
import { fileFailure } from '../disk/file-errors';
import { prettyJson } from './pretty-json';

const fileSchema = z.strictObject({
  format: z.literal('submark-remembered'),
  version: z.literal(1),
  /** Oldest first. */
  kept: z.array(z.strictObject({ key: memoryKeySchema, text: memoryTextSchema })),
});

/** Pairs are remembered one by one and never removed by hand: the oldest give way. Our own limit. */
const keptAtMost = 300;

/**
 * What windows remember, in one file of the coach's own settings, so that it follows from browser to desktop. Without a
 * file it lasts as long as the host.
 */
export class Remembered {
  private kept: Promise<Map<string, string>> | null = null;
  private written: Promise<Result<null>> = Promise.resolve(success(null));

  constructor(
    private readonly file: string | null,
    private readonly disk: Disk,
  ) {}

  async read(): Promise<Readonly<Record<string, string>>> {
    this.kept ??= this.load();
    return Object.fromEntries(await this.kept);
  }

  /** Null forgets. Resolves when it is on disk. */
  async keep(key: string, text: string | null): Promise<Result<null>> {
    this.kept ??= this.load();
    const kept = await this.kept;
    if ((kept.get(key) ?? null) === text) return this.written;
    kept.delete(key);
    if (text !== null) kept.set(key, text);
    for (const oldest of [...kept.keys()].slice(0, Math.max(0, kept.size - keptAtMost))) kept.delete(oldest);
    // one write at a time, each with all that is remembered by then
    this.written = this.written.then(() => this.write(kept));
    return this.written;
  }

  private async write(kept: ReadonlyMap<string, string>): Promise<Result<null>> {
    if (this.file === null) return success(null);
    const entries = [...kept].map(([key, text]) => ({ key, text }));
    try {
      await mkdir(path.dirname(this.file), { recursive: true });
      await this.disk.writeWhole(
        this.file,
        prettyJson({ format: 'submark-remembered', version: 1, kept: entries }),
      );
      return success(null);
    } catch (error) {
      return fileFailure(error, path.basename(this.file), 'writing');
    }
  }

  private async load(): Promise<Map<string, string>> {
    if (this.file === null) return new Map();
    let text: string;
    try {
      text = await readFile(this.file, 'utf8');
    } catch (error) {
      fileFailure(error, this.file, 'reading');
      return new Map();
    }
    try {
      return new Map(fileSchema.parse(JSON.parse(text)).kept.map((each) => [each.key, each.text]));
    } catch (error) {
      // nothing here is worth a question: it is remembered afresh
      if (error instanceof SyntaxError || error instanceof z.ZodError) return new Map();
      throw error;
    }
  }
}
