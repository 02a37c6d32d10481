import { readdir, readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { BinContent } from '#core/host-contract/operations/upkeep-operations';
import { parsePractice } from '#core/practice/practice-file';
import { parseTrial } from '#core/practice/trial-schema';
import { parseSwim } from '#core/swim-file/swim-file';
import { idSchema } from '#core/swim-file/swim-schema';
import { fileFailure } from '../../disk/file-errors';
import type { LibraryFolder } from '../library-folder';
import { walkFiles } from './walk-files';

const never = new AbortController().signal;

async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort();
  } catch (error) {
    fileFailure(error, path.basename(folder), 'reading');
    return [];
  }
}

async function textOf(file: string): Promise<string> {
  return readFile(file, 'utf8').catch((error: unknown) => {
    fileFailure(error, path.basename(file), 'reading');
    return '';
  });
}

/** Files and bytes under a folder. */
export async function amountOf(folder: string): Promise<{ files: number; bytes: number }> {
  let files = 0;
  let bytes = 0;
  for await (const { facts } of walkFiles(folder, never)) {
    files += 1;
    bytes += facts.size;
  }
  return { files, bytes };
}

const planBin = (folder: LibraryFolder, kind: 'practice' | 'trial'): string =>
  path.join(kind === 'practice' ? folder.practices : folder.trials, '.bin');

/** Everything that waits in the library's bins. */
export async function binContent(folder: LibraryFolder): Promise<BinContent> {
  const swims: BinContent['swims'] = [];
  for (const id of await namesIn(folder.bin)) {
    if (!idSchema.safeParse(id).success) continue;
    const parsed = parseSwim(await textOf(path.join(folder.bin, id, 'swim.json')));
    const { bytes } = await amountOf(path.join(folder.bin, id));
    swims.push({
      id,
      card: parsed.ok ? parsed.value.card : null,
      marks: parsed.ok ? parsed.value.events.length + parsed.value.postures.length : 0,
      bytes,
    });
  }
  const plans: BinContent['plans'] = [];
  for (const kind of ['practice', 'trial'] as const)
    for (const name of await namesIn(planBin(folder, kind))) {
      const id = name.replace(/\.json$/, '');
      if (!idSchema.safeParse(id).success) continue;
      const file = path.join(planBin(folder, kind), name);
      const text = await textOf(file);
      const parsed = kind === 'practice' ? parsePractice(text) : parseTrial(text);
      plans.push({ kind, id, title: parsed.ok ? parsed.value.title : name, bytes: (await stat(file)).size });
    }
  return { swims, plans };
}

/** Removes for good what is named, and only from the bins. */
export async function emptyBin(
  folder: LibraryFolder,
  named: {
    readonly swims: readonly string[];
    readonly practices: readonly string[];
    readonly trials: readonly string[];
  },
): Promise<{ files: number; bytes: number }> {
  const sum = { files: 0, bytes: 0 };
  for (const id of named.swims) {
    const { files, bytes } = await amountOf(path.join(folder.bin, id));
    await rm(path.join(folder.bin, id), { recursive: true, force: true });
    sum.files += files;
    sum.bytes += bytes;
  }
  for (const [kind, ids] of [
    ['practice', named.practices],
    ['trial', named.trials],
  ] as const)
    for (const id of ids) {
      const file = path.join(planBin(folder, kind), `${id}.json`);
      const facts = await stat(file).catch((error: unknown) => {
        fileFailure(error, id, 'reading');
        return null;
      });
      if (!facts) continue;
      await rm(file, { force: true });
      sum.files += 1;
      sum.bytes += facts.size;
    }
  return sum;
}
