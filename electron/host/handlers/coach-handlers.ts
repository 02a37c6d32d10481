import type { coachOperations } from '#core/host-contract/operations/coach-operations';
import { coachFileOn, readCoach } from '../coach-on-disk';
import { prettyJson } from '../pretty-json';
import type { HandlersOf, HostParts } from './handlers';

export function coachHandlers({ folder, disk }: HostParts): HandlersOf<typeof coachOperations> {
  const coachFile = coachFileOn(disk);
  return {
    'coach/read': async () => readCoach(coachFile, folder.coach, disk),
    'coach/write': ({ coach, baseRevision }) =>
      coachFile.write(folder.coach, prettyJson(coach), baseRevision),
  };
}
