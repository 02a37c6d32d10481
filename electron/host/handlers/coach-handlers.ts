import { success } from '#core/host-contract/host-error';
import type { coachOperations } from '#core/host-contract/operations/coach-operations';
import { emptyCoach } from '#core/swim-file/coach-file';
import { coachFileOn } from '../coach-on-disk';
import { prettyJson } from '../pretty-json';
import type { HandlersOf, HostParts } from './handlers';

export function coachHandlers({ folder, disk }: HostParts): HandlersOf<typeof coachOperations> {
  const coachFile = coachFileOn(disk);
  return {
    'coach/read': async () => {
      const read = await coachFile.readOr(folder.coach, emptyCoach);
      return read.ok ? success({ coach: read.value.value, revision: read.value.revision }) : read;
    },
    'coach/write': ({ coach, baseRevision }) =>
      coachFile.write(folder.coach, prettyJson(coach), baseRevision),
  };
}
