import { success } from '#core/host-contract/host-error';
import type { libraryOperations } from '#core/host-contract/operations/library-operations';
import type { squadOperations } from '#core/host-contract/operations/squad-operations';
import { emptySquad } from '#core/swim-file/squad-file';
import { prettyJson } from '../pretty-json';
import { squadFileOn } from '../squad-file';
import type { HandlersOf, HostParts } from './handlers';

/** Milliseconds a window that shows what there is waits for swims that have to be read. Our default. */
const openingPatience = 200;

export function libraryHandlers({
  folder,
  disk,
  shelf,
}: HostParts): HandlersOf<typeof libraryOperations & typeof squadOperations> {
  const squadFile = squadFileOn(disk);
  return {
    'library/open': async ({ partly, atMost, remembered }) => {
      const listed = await shelf.list({
        ...(partly ? { patience: openingPatience } : {}),
        atMost,
        remembered: remembered ?? false,
      });
      if (!listed.ok) return listed;
      const squad = await squadFile.readOr(folder.squad, emptySquad);
      if (!squad.ok) return squad;
      return success({
        path: folder.root,
        ...listed.value,
        squad: squad.value.value,
        squadRevision: squad.value.revision,
      });
    },
    'squad/read': async () => {
      const read = await squadFile.readOr(folder.squad, emptySquad);
      return read.ok ? success({ squad: read.value.value, revision: read.value.revision }) : read;
    },
    'squad/write': ({ squad, baseRevision }) =>
      squadFile.write(folder.squad, prettyJson(squad), baseRevision),
  };
}
