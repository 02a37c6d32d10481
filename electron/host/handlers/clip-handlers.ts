import { success } from '#core/host-contract/host-error';
import type { clipOperations } from '#core/host-contract/operations/clip-operations';
import type { mediaOperations } from '#core/host-contract/operations/media-operations';
import { describeMediaTools } from '../../media/find-media-tool';
import type { HandlersOf, HostParts } from './handlers';

export function clipHandlers({
  clips,
}: HostParts): HandlersOf<typeof clipOperations & typeof mediaOperations> {
  return {
    'clip/refer': ({ path: file }) => clips.refer(file),
    'clip/discard': ({ clipId }) => clips.discard(clipId),
    'media/tools': async () => success(await describeMediaTools()),
  };
}
