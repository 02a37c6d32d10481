import { mkdir, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { plainName } from '../../disk/contained-path';
import { stop } from '../command-end';
import type { AskedExport } from './export-command';
import { commandLineWords } from '#core/words/command-line';

export interface OutFile {
  readonly name: string;
  readonly bytes: Uint8Array | string;
}

/**
 * Writes files into `--out` (else where the command runs) and prints where. Before the first is written, none may be
 * there already, unless `--replace` says so.
 */
export async function writeOut(asked: AskedExport, files: readonly OutFile[]): Promise<void> {
  const folder = path.resolve(asked.value('--out') ?? '.');
  const named = files.map((each) => ({ ...each, path: path.join(folder, plainName(each.name)) }));
  if (!asked.has('--replace'))
    for (const each of named) {
      const there = await stat(each.path).then(
        () => true,
        () => false,
      );
      if (there) stop(1, commandLineWords('thereAlreadyNothingWritten', { path: each.path }));
    }
  try {
    await mkdir(folder, { recursive: true });
    for (const each of named) {
      await writeFile(each.path, each.bytes, { flag: asked.has('--replace') ? 'w' : 'wx' });
      console.log(each.path);
    }
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error)) throw error;
    stop(1, commandLineWords('cantWrittenFolder', { folder, code: String(error.code) }));
  }
}
