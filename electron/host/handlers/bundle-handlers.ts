import { failure, success } from '#core/host-contract/host-error';
import type { bundleOperations } from '#core/host-contract/operations/bundle-operations';
import { makeBundle } from '../bundle/make-bundle';
import type { HandlersOf, HostParts } from './handlers';

export function bundleHandlers(parts: HostParts): HandlersOf<typeof bundleOperations> {
  const { folder, shelf, jobs, bundles, makeId } = parts;
  return {
    'bundle/make': async ({ id }) => {
      const read = await shelf.read(id);
      if (!read.ok) return read;
      const clip = await shelf.presentClip(id);
      if (clip === null) return failure('clip-missing', { name: read.value.swim.clip.originalName });
      const swim = read.value.swim;
      const jobId = jobs.start((signal, report) =>
        makeBundle({
          swim,
          clip,
          swimFolder: shelf.folderOf(id),
          into: folder.exports,
          tempId: makeId(),
          madeAt: new Date(),
          signal,
          report,
        }),
      );
      return success({ jobId });
    },
    'bundle/open': async ({ path }) => success({ jobId: jobs.start(async () => bundles.open(path)) }),
    'bundle/keep': ({ bundleId, as }) => bundles.keep(bundleId, as),
    'bundle/discard': ({ bundleId }) => bundles.discard(bundleId),
  };
}
