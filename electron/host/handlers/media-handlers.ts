import path from 'node:path';
import { failure, success } from '#core/host-contract/host-error';
import type { mediaOperations } from '#core/host-contract/operations/media-operations';
import { draftName } from '../../disk/drafts';
import { describeMediaTools } from '../../media/find-media-tool';
import { checkPictures } from '../../media/check-pictures';
import { lookAtFilm } from '../../media/look-at-film';
import type { HandlersOf, HostParts } from './handlers';
import { hostJobsWords } from '#core/words/host-jobs';

export function mediaHandlers({
  clips,
  copies,
  folder,
  jobs,
  makeId,
}: HostParts): HandlersOf<typeof mediaOperations> {
  return {
    'media/tools': async () => success(await describeMediaTools()),
    'media/look': async ({ clipId, track }) => {
      const file = clips.fileOf(clipId);
      if (!file) return failure('not-found', { name: hostJobsWords('clip') });
      const scratch = path.join(folder.arriving, draftName(makeId(), '.jpg'));
      const jobId = jobs.start((signal, report) => lookAtFilm({ file, track, scratch, signal, report }));
      return success({ jobId });
    },
    'media/check': async ({ of, ...film }) => {
      const found = 'clipId' in of ? success(clips.fileOf(of.clipId)) : await copies.originalFile(of.swimId);
      if (!found.ok) return found;
      const file = found.value;
      if (!file) return failure('not-found', { name: hostJobsWords('clip') });
      const jobId = jobs.start((signal, report) => checkPictures({ file, ...film, signal, report }));
      return success({ jobId });
    },
    'copy/look': ({ id }) => copies.look(id),
    'copy/make': ({ id, frame }) => copies.make(id, frame ?? 0),
    'copy/watch': async ({ id, frame }) => success({ pieces: copies.watch(id, frame) }),
    'copy/stills': async ({ id, around, asked }) => {
      const stills = await copies.stills(
        id,
        around,
        asked,
        path.join(folder.arriving, draftName(makeId(), '.stills')),
      );
      return stills.ok ? success({ stills: [...stills.value] }) : stills;
    },
    'copy/room': async () => success(await copies.room()),
    'copy/limit': ({ limitBytes }) => copies.setLimit(limitBytes),
  };
}
