import { success } from '#core/host-contract/host-error';
import type { clipOperations } from '#core/host-contract/operations/clip-operations';
import type { HandlersOf, HostParts } from './handlers';

export function clipHandlers({ clips, jobs }: HostParts): HandlersOf<typeof clipOperations> {
  return {
    'clip/refer': ({ path: file }) => clips.refer(file),
    'clip/arriving': async ({ arrivalId }) => success({ bytes: clips.bytesOf(arrivalId) }),
    'clip/stop-arriving': async ({ arrivalId }) => {
      clips.stopArriving(arrivalId);
      return success({});
    },
    'clip/copy': async ({ clipId }) =>
      success({ jobId: jobs.start((signal, report) => clips.copyIn(clipId, signal, report)) }),
    'clip/discard': ({ clipId }) => clips.discard(clipId),
  };
}
