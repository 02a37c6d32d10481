import { mkdir, rm } from 'node:fs/promises';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { swimOperations } from '#core/host-contract/operations/swim-operations';
import type { Swim } from '#core/swim-file/swim-schema';
import { fileFailure } from '../../disk/file-errors';
import { relinkClip } from '../relink-clip';
import type { HandlersOf, HostParts } from './handlers';

export function swimHandlers({ shelf, clips }: HostParts): HandlersOf<typeof swimOperations> {
  const create = async (swim: Swim, clipId: string): Promise<Result<{ swim: Swim; revision: string }>> => {
    const into = shelf.folderOf(swim.id);
    try {
      await mkdir(into);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EEXIST')
        return failure('already-there', { name: swim.id });
      return fileFailure(error, swim.id, 'writing');
    }
    const settled = await clips.settle(clipId, into);
    const made = settled.ok ? { ...swim, clip: { ...swim.clip, ...settled.value.clip } } : swim;
    const written = settled.ok ? await shelf.write(made, null) : settled;
    if (!written.ok) {
      // the clip waits for another try; only then may the folder go
      if (settled.ok) await settled.value.giveBack();
      await rm(into, { recursive: true, force: true });
      return written;
    }
    return success({ swim: made, revision: written.value.revision });
  };

  return {
    'swim/read': ({ id }) => shelf.read(id),
    'swim/clip-status': ({ id }) => shelf.lookAtClip(id),
    'swim/write': ({ swim, baseRevision, lineage }) => shelf.write(swim, baseRevision, lineage),
    'swim/create': ({ swim, clipId }) => create(swim, clipId),
    'swim/remove': ({ id }) => shelf.remove(id),
    'swim/restore': ({ id }) => shelf.restore(id),
    'swim/relink': ({ id, path: file }) => relinkClip(shelf, id, file),
  };
}
