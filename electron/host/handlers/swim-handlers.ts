import { mkdir, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { swimOperations } from '#core/host-contract/operations/swim-operations';
import type { Swim } from '#core/swim-file/swim-schema';
import { fileFailure } from '../file-errors';
import { fingerprintOf, sameFingerprint } from '../fingerprint';
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

  const relink = async (id: string, file: string): Promise<Result<OperationOutput<'swim/relink'>>> => {
    const read = await shelf.read(id);
    if (!read.ok) return read;
    const { swim, revision } = read.value;
    const name = path.basename(file);
    if (!path.isAbsolute(file) || file.includes('\0')) return failure('not-allowed', { name });
    try {
      if (!(await stat(file)).isFile()) return failure('not-a-video', { name });
      if (!sameFingerprint(await fingerprintOf(file), swim.clip.fingerprint))
        return failure('clip-changed', { name });
    } catch (error) {
      return fileFailure(error, name, 'reading');
    }
    const moved: Swim = { ...swim, clip: { ...swim.clip, place: { kind: 'outside', path: file } } };
    const written = await shelf.write(moved, revision);
    return written.ok ? success({ swim: moved, revision: written.value.revision }) : written;
  };

  return {
    'swim/read': ({ id }) => shelf.read(id),
    'swim/write': ({ swim, baseRevision }) => shelf.write(swim, baseRevision),
    'swim/create': ({ swim, clipId }) => create(swim, clipId),
    'swim/remove': ({ id }) => shelf.remove(id),
    'swim/restore': ({ id }) => shelf.restore(id),
    'swim/relink': ({ id, path: file }) => relink(id, file),
  };
}
