import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { z } from 'zod';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { clipsFoundSchema } from '#core/host-contract/operations/upkeep-operations';
import { fileFailure } from '../../disk/file-errors';
import { fingerprintOf, sameFingerprint } from '../fingerprint';
import type { JobReport } from '../jobs';
import { relinkClip } from '../relink-clip';
import type { SwimShelf } from '../shelf/swim-shelf';
import { walkFiles } from './walk-files';
import { hostJobsWords } from '#core/words/host-jobs';

/**
 * Looks through a folder and all under it for the clips that swims miss. Size tells most files apart without opening
 * them; only those of a wanted size are read, at their edges. Several swims of one film are all found at once.
 */
export async function findClips(
  shelf: SwimShelf,
  folder: string,
  signal: AbortSignal,
  report: JobReport,
): Promise<Result<z.infer<typeof clipsFoundSchema>>> {
  const name = path.basename(folder);
  if (!path.isAbsolute(folder) || folder.includes('\0')) return failure('not-allowed', { name: folder });
  try {
    if (!(await stat(folder)).isDirectory()) return failure('not-found', { name });
  } catch (error) {
    return fileFailure(error, name, 'reading');
  }
  const listed = await shelf.list();
  if (!listed.ok) return listed;
  const missing = new Map(
    listed.value.swims.filter(({ clipStatus }) => clipStatus !== 'present').map((swim) => [swim.id, swim]),
  );
  const wantedSizes = new Set([...missing.values()].map(({ clip }) => clip.fingerprint.bytes));
  const done: z.infer<typeof clipsFoundSchema> = {
    found: [],
    stillMissing: 0,
    looked: 0,
    closedFolders: 0,
    failed: [],
  };
  const closed = (): void => {
    done.closedFolders += 1;
  };
  for await (const file of walkFiles(folder, signal, closed)) {
    if (missing.size === 0) break;
    done.looked += 1;
    if (done.looked % 200 === 0)
      report(null, hostJobsWords('filesLookedAt', { looked: done.looked, found: done.found.length }));
    if (!wantedSizes.has(file.facts.size)) continue;
    const fingerprint = await fingerprintOf(file.full).catch((error: unknown) => {
      fileFailure(error, file.name, 'reading');
      return null;
    });
    if (!fingerprint) continue;
    for (const swim of [...missing.values()]) {
      if (!sameFingerprint(fingerprint, swim.clip.fingerprint)) continue;
      missing.delete(swim.id);
      const linked = await relinkClip(shelf, swim.id, file.full);
      if (linked.ok) done.found.push({ id: swim.id, path: file.full });
      else done.failed.push({ id: swim.id, error: linked.error });
    }
  }
  done.stillMissing = missing.size + done.failed.length;
  return success(done);
}
