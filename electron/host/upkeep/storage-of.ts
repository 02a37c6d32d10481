import type { Storage, StorageKind } from '#core/host-contract/operations/upkeep-operations';
import { storageKinds } from '#core/host-contract/operations/upkeep-operations';
import type { JobReport } from '../jobs';
import type { LibraryFolder } from '../library-folder';
import { isSwimCopy } from '../swim-copies';
import { walkFiles } from './walk-files';
import { hostJobsWords } from '#core/words/host-jobs';

/** What a file of the library is, by where it lies and what it is called. */
export function storageKind(name: string): StorageKind {
  const parts = name.split('/');
  const [top = '', , third] = parts;
  const last = parts.at(-1) ?? '';
  if (top === '.cache' || top === '.arriving') return 'cache';
  if (top === 'bin' || parts.includes('.bin')) return 'bin';
  if (top === 'exports') return 'exports';
  if (parts.includes('.generations') || parts.includes('.writers')) return 'generations';
  if (/\.(conflict|damaged)-[0-9a-f]+\.json$/.test(last)) return 'copies';
  if (top === 'swims' && parts.length === 3) {
    if (third === 'swim.json') return 'marks';
    if (third === 'thumb.jpg') return 'thumbnails';
    return isSwimCopy(last) ? 'copies' : 'clips';
  }
  // a document's name is its id; what a folder service lays beside it has a space, a dot or a bracket in its name
  if (['practices', 'trials'].includes(top)) return /^[\w-]+\.json$/.test(last) ? 'plans' : 'copies';
  if (parts.length === 1 && last.endsWith('.json')) return 'plans';
  return 'other';
}

/** Adds up the room each kind takes. `clipsOutside` is the caller's, who knows the swims. */
export async function storageOf(
  folder: LibraryFolder,
  clipsOutside: number,
  signal: AbortSignal,
  report: JobReport,
): Promise<Storage> {
  const kinds = Object.fromEntries(
    storageKinds.map((kind) => [kind, { files: 0, bytes: 0 }]),
  ) as Storage['kinds'];
  let looked = 0;
  for await (const { name, facts } of walkFiles(folder.root, signal)) {
    const sum = kinds[storageKind(name)];
    sum.files += 1;
    sum.bytes += facts.size;
    if (++looked % 500 === 0) report(null, hostJobsWords('filesLooked', { looked }));
  }
  return { kinds, clipsOutside };
}
