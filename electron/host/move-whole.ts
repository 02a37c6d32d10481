import { mkdir, rename, stat } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { fileFailure } from '../disk/file-errors';

/** Moves a file or folder to a place that is free, making the folder around it; `already-there` when it is not free. */
export async function moveWhole(from: string, to: string): Promise<Result<Record<string, never>>> {
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
