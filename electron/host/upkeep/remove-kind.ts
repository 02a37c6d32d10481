import { rm } from 'node:fs/promises';
import type { StorageKind } from '#core/host-contract/operations/upkeep-operations';
import type { LibraryFolder } from '../library-folder';
import { storageKind } from './storage-of';
import { walkFiles } from './walk-files';

/** Removes every file of a kind from the library, wherever it lies; folders stay. What the bin holds is the bin's. */
export async function removeKind(
  folder: LibraryFolder,
  kind: Extract<StorageKind, 'generations' | 'thumbnails'>,
): Promise<{ files: number; bytes: number }> {
  const gone = { files: 0, bytes: 0 };
  for await (const { name, full, facts } of walkFiles(folder.root, new AbortController().signal)) {
    if (storageKind(name) !== kind) continue;
    await rm(full, { force: true });
    gone.files += 1;
    gone.bytes += facts.size;
  }
  return gone;
}
