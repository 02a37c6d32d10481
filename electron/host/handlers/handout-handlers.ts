import path from 'node:path';
import { parseHandout } from '#core/handout/handout-file';
import { success } from '#core/host-contract/host-error';
import type { handoutOperations } from '#core/host-contract/operations/handout-operations';
import { KeptFile } from '../kept-file';
import { prettyJson } from '../pretty-json';
import type { HandlersOf, HostParts } from './handlers';

export function handoutHandlers({ shelf, disk }: HostParts): HandlersOf<typeof handoutOperations> {
  const kept = new KeptFile(disk, parseHandout, { damaged: 'file-damaged', newer: 'file-newer-version' });
  const fileOf = (swimId: string): string => path.join(shelf.folderOf(swimId), 'handout.json');
  return {
    'handout/read': async ({ swimId }) => {
      const file = fileOf(swimId);
      const read = await kept.read(file);
      if (read.ok) {
        const { value, revision } = read.value;
        return success({ handout: value, revision, written: await kept.written(file, revision) });
      }
      return read.error.code === 'not-found' ? success({ handout: null, revision: null, written: [] }) : read;
    },
    'handout/write': async ({ handout, baseRevision, lineage }) => {
      // never a folder for a swim that is not there
      const swim = await shelf.read(handout.swimId);
      if (!swim.ok) return swim;
      return kept.write(fileOf(handout.swimId), prettyJson(handout), baseRevision, lineage);
    },
  };
}
