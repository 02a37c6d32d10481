import { stat } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { Swim } from '#core/swim-file/swim-schema';
import { fileFailure } from '../disk/file-errors';
import { fingerprintOf, sameFingerprint } from './fingerprint';
import type { SwimShelf } from './shelf/swim-shelf';

/** Points a swim at its clip's new place; refused unless the file there is the very clip the marks were made on. */
export async function relinkClip(
  shelf: SwimShelf,
  id: string,
  file: string,
): Promise<Result<OperationOutput<'swim/relink'>>> {
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
  const own = path.resolve(path.dirname(file)) === path.resolve(shelf.folderOf(id));
  const place: Swim['clip']['place'] = own ? { kind: 'inside', name } : { kind: 'outside', path: file };
  const moved: Swim = { ...swim, clip: { ...swim.clip, place } };
  const written = await shelf.write(moved, revision);
  return written.ok ? success({ swim: moved, revision: written.value.revision }) : written;
}
