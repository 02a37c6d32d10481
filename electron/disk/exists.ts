import { access, readdir } from 'node:fs/promises';

/** Whether a file or folder is there. */
export async function exists(file: string): Promise<boolean> {
  try {
    await access(file);
    return true;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return false;
    throw error;
  }
}

/** False when the folder is free to be made: not there, or empty. */
export async function taken(folder: string): Promise<boolean> {
  try {
    return (await readdir(folder)).length > 0;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return false;
    throw error;
  }
}
