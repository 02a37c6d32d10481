import { link, mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { stop } from '../command-end';
import type { AskedExport } from './export-command';
import { commandLineWords } from '#core/words/command-line';

interface MadeFile {
  readonly name: string;
  readonly path: string;
}

/**
 * Lets a large file be made in a folder of its own beside its place, and moves it to `--out` (else where the command runs)
 * once it is whole; never over one that is there, unless `--replace` says so. Ctrl C stops it and leaves nothing.
 */
export async function moveOut(
  asked: AskedExport,
  make: (folder: string, signal: AbortSignal) => Promise<MadeFile>,
): Promise<void> {
  const out = path.resolve(asked.value('--out') ?? '.');
  const stopped = new AbortController();
  const interrupt = (): void => stopped.abort();
  process.once('SIGINT', interrupt);
  let temp: string | null = null;
  try {
    await mkdir(out, { recursive: true });
    temp = await mkdtemp(path.join(out, '.making-'));
    const made = await make(temp, stopped.signal);
    const to = path.join(out, made.name);
    if (asked.has('--replace')) await rename(made.path, to);
    else await linkNew(made.path, to);
    console.log(to);
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') throw error;
    stop(1, commandLineWords('cantWritten', { out, code: error.code }));
  } finally {
    process.off('SIGINT', interrupt);
    if (temp) await rm(temp, { recursive: true, force: true });
  }
}

async function linkNew(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    stop(1, commandLineWords('thereAlreadyNothing', { to }));
  }
}
