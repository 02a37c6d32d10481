import { createHash } from 'node:crypto';
import { mkdir, open, readdir, readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import writeFileAtomic from 'write-file-atomic';

/** How many earlier good versions of a file are kept beside it. */
const generationsKept = 5;

/** What the host needs of a disk; tests hand in one that fails. */
export interface Disk {
  readText(file: string): Promise<string>;
  /** Temp file in the same folder, fsync, rename, fsync of the folder: the old or the new text, never half of one. */
  writeWhole(file: string, text: string): Promise<void>;
}

export const realDisk: Disk = {
  readText: (file) => readFile(file, 'utf8'),
  async writeWhole(file, text) {
    await writeFileAtomic(file, text, { fsync: true });
    await flushFolder(path.dirname(file));
  },
};

/** Brings a whole file to the disk, before it gets the name that says it is whole. */
export async function flushFile(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Makes a rename outlast a power cut. Windows can't open folders and needs no such step. */
async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } catch (error) {
    // some network disks know no flush of a folder; the file itself is flushed
    if (!['EINVAL', 'ENOTSUP'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
  } finally {
    await handle.close();
  }
}

/** What a killed save leaves: the atomic writer's own name for a file not yet renamed. */
const draftName = /^(.+)\.\d{6,}$/;

/** Minutes after which no save is still between writing and renaming, on the slowest disk. Our own limit. */
const savedWithinMinutes = 10;

/**
 * Removes what killed saves of a file left beside it and beside its generations. Only before a program's first save, and
 * nothing young: another program on the same library may be about to rename it.
 */
export async function sweepDrafts(file: string): Promise<void> {
  const folder = path.dirname(file);
  const stem = path.basename(file);
  for (const where of [folder, path.join(folder, '.generations'), path.join(folder, '.writers')]) {
    const names = await readdir(where).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return [] as string[];
      throw error;
    });
    for (const name of names) {
      const of = draftName.exec(name)?.[1];
      if (of !== stem && (of === undefined || !isGeneration(of, stem))) continue;
      if (isGeneration(name, stem)) continue;
      const left = path.join(where, name);
      const changedMs = await stat(left).then(
        ({ mtimeMs }) => mtimeMs,
        (error: NodeJS.ErrnoException) => {
          if (error.code !== 'ENOENT') throw error;
          return null;
        },
      );
      if (changedMs !== null && Date.now() - changedMs > savedWithinMinutes * 60_000)
        await rm(left, { force: true });
    }
  }
}

export function revisionOf(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

const isGeneration = (name: string, stem: string): boolean =>
  name.startsWith(stem) && /^\.\d{8}$/.test(name.slice(stem.length));

/**
 * Keep `text` as a generation of `file` in its folder's .generations, newest `generationsKept` only. Names sort by
 * age: a counter, not the clock, which can jump back.
 */
export async function keepGeneration(file: string, text: string): Promise<void> {
  const folder = path.join(path.dirname(file), '.generations');
  await mkdir(folder, { recursive: true });
  const stem = path.basename(file);
  const names = (await readdir(folder)).filter((each) => isGeneration(each, stem)).sort();
  const newest = names.at(-1);
  // a save that is tried again and again must not push out the older ones with the same text
  if (newest !== undefined && (await readFile(path.join(folder, newest), 'utf8')) === text) return;
  const last = Number(newest?.slice(stem.length + 1) ?? 0);
  // whole or not at all: half a version on a full disk would take the place of a good one
  await writeFileAtomic(path.join(folder, `${stem}.${String(last + 1).padStart(8, '0')}`), text, {
    fsync: false,
  });
  for (const old of names.slice(0, Math.max(0, names.length + 1 - generationsKept)))
    await rm(path.join(folder, old), { force: true });
}

/** Texts of the kept generations, newest first. */
export async function generations(file: string): Promise<string[]> {
  const folder = path.join(path.dirname(file), '.generations');
  const stem = path.basename(file);
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
  const mine = names
    .filter((each) => isGeneration(each, stem))
    .sort()
    .reverse();
  return Promise.all(mine.map((name) => readFile(path.join(folder, name), 'utf8')));
}
