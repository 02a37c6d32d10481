import { hasPoint } from '#core/swim-file/has-point';
import { readdir, readFile, rm } from 'node:fs/promises';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { copyOperations, SwimVersion } from '#core/host-contract/operations/copy-operations';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { keepGeneration, revisionOf } from '../../disk/atomic-file';
import { containedPath } from '../../disk/contained-path';
import { fileFailure } from '../../disk/file-errors';
import { isSwimCopy } from '../swim-copies';
import type { HandlersOf, HostParts } from './handlers';

const versionOf = (name: string | null, revision: string, swim: Swim): SwimVersion => ({
  name,
  revision,
  changedAt: swim.changedAt,
  card: swim.card,
  eventCount: swim.events.length,
  postureCount: swim.postures.filter(hasPoint).length,
  followedCount: swim.followed.length,
});

/** Versions of a swim that was changed in two places, and which of them is to be the swim. */
export function copyHandlers({ shelf }: HostParts): HandlersOf<typeof copyOperations> {
  const readCopy = async (id: string, name: string): Promise<Result<{ text: string; swim: Swim | null }>> => {
    if (!isSwimCopy(name)) return failure('not-allowed', { name });
    const file = await containedPath(shelf.folderOf(id), name);
    if (file === null) return failure('not-allowed', { name });
    try {
      const text = await readFile(file, 'utf8');
      const parsed = parseSwim(text);
      return success({ text, swim: parsed.ok && parsed.value.id === id ? parsed.value : null });
    } catch (error) {
      return fileFailure(error, name, 'reading');
    }
  };
  return {
    'swim/versions': async ({ id }) => {
      const read = await shelf.read(id);
      if (!read.ok) return read;
      const versions = [versionOf(null, read.value.revision, read.value.swim)];
      const unreadable: string[] = [];
      const names = (await readdir(shelf.folderOf(id))).filter(isSwimCopy).sort();
      for (const name of names) {
        const copy = await readCopy(id, name);
        if (copy.ok && copy.value.swim)
          versions.push(versionOf(name, revisionOf(copy.value.text), copy.value.swim));
        else unreadable.push(name);
      }
      return success({ versions, unreadable });
    },
    'swim/settle': async ({ id, copy: name, take, baseRevision }) => {
      const shelfs = await shelf.read(id);
      if (!shelfs.ok) return shelfs;
      if (shelfs.value.revision !== baseRevision) return failure('conflict', { name: 'swim.json' });
      const copy = await readCopy(id, name);
      if (!copy.ok) return copy;
      const file = await containedPath(shelf.folderOf(id), name);
      if (file === null) return failure('not-allowed', { name });
      let revision = baseRevision;
      if (take === 'copy') {
        if (!copy.value.swim) return failure('swim-damaged', { name });
        // where the clip lies is the shelf's to say: a copy may know an older place
        const { clip } = shelfs.value.swim;
        const written = await shelf.write({ ...copy.value.swim, clip }, baseRevision);
        if (!written.ok) return written;
        revision = written.value.revision;
      }
      try {
        // nothing is lost: the version not taken is a generation now, and only then its copy goes
        if (take === 'shelf') await keepGeneration(shelf.swimFile(id), copy.value.text);
        await rm(file);
      } catch (error) {
        return fileFailure(error, name, 'writing');
      }
      return success({ revision });
    },
  };
}
