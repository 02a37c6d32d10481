import type { clipOperations } from '#core/host-contract/operations/clip-operations';
import type { HandlersOf, HostParts } from './handlers';

export function clipHandlers({ clips }: HostParts): HandlersOf<typeof clipOperations> {
  return {
    'clip/refer': ({ path: file }) => clips.refer(file),
    'clip/discard': ({ clipId }) => clips.discard(clipId),
  };
}
