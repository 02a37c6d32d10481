import { mkdir, rm } from 'node:fs/promises';
import { type Result, success } from '#core/host-contract/host-error';
import type { clashOperations } from '#core/host-contract/operations/clash-operations';
import type { upkeepOperations } from '#core/host-contract/operations/upkeep-operations';
import { fileFailure } from '../../disk/file-errors';
import type { JobWork } from '../jobs';
import { backUp } from '../upkeep/back-up';
import { amountOf, binContent, emptyBin } from '../upkeep/bin-content';
import { DocumentClashes } from '../upkeep/document-clashes';
import { eraseSwimmer, planErasing } from '../upkeep/erase-swimmer';
import { findClips } from '../upkeep/find-clips';
import { restoreLibrary } from '../upkeep/restore-library';
import { removeKind } from '../upkeep/remove-kind';
import { storageOf } from '../upkeep/storage-of';
import type { HandlersOf, HostParts } from './handlers';
import { hostJobsWords } from '#core/words/host-jobs';

/** A file call that fails on the way is told, not thrown. */
async function told<T>(name: string, work: () => Promise<T>): Promise<Result<T>> {
  try {
    return success(await work());
  } catch (error) {
    return fileFailure(error, name, 'writing');
  }
}

export function upkeepHandlers({
  folder,
  disk,
  shelf,
  jobs,
  makeId,
}: HostParts): HandlersOf<typeof upkeepOperations & typeof clashOperations> {
  const clashes = new DocumentClashes(folder, disk);
  const start = async (work: JobWork): Promise<Result<{ jobId: string }>> =>
    success({ jobId: jobs.start(work) });
  const outsideClips = async (): Promise<Result<string[]>> => {
    const listed = await shelf.list();
    if (!listed.ok) return listed;
    const paths: string[] = [];
    for (const { id, clip } of listed.value.swims) {
      if (clip.inside) continue;
      const read = await shelf.read(id);
      if (read.ok && read.value.swim.clip.place.kind === 'outside')
        paths.push(read.value.swim.clip.place.path);
    }
    return success(paths);
  };
  return {
    'clashes/list': () => clashes.list(),
    'clashes/settle': (asked) => clashes.settle(asked),
    'storage/look': () =>
      start(async (signal, report) => {
        const listed = await shelf.list();
        if (!listed.ok) return listed;
        const outside = listed.value.swims.filter(({ clip }) => !clip.inside).length;
        return success(await storageOf(folder, outside, signal, report));
      }),
    'storage/clean': ({ what }) =>
      told(what, async () => {
        if (what === 'generations' || what === 'thumbnails') return removeKind(folder, what);
        const place = what === 'exports' ? folder.exports : folder.cache;
        if (what === 'cache') shelf.forget();
        const amount = await amountOf(place);
        await rm(place, { recursive: true, force: true });
        await mkdir(place, { recursive: true });
        return amount;
      }),
    'bin/list': () => told(hostJobsWords('bin'), () => binContent(folder)),
    'bin/empty': (named) => told(hostJobsWords('bin'), () => emptyBin(folder, named)),
    'clips/find': ({ folder: where }) => start((signal, report) => findClips(shelf, where, signal, report)),
    'library/back-up': ({ file }) =>
      start(async (signal, report) => {
        const outside = await outsideClips();
        return outside.ok ? backUp(folder, file, outside.value, makeId(), signal, report) : outside;
      }),
    'library/restore': ({ archive, folder: into }) =>
      start((signal, report) => restoreLibrary(archive, into, makeId(), signal, report)),
    'erase/plan': ({ swimmerId }) =>
      start((signal, report) => planErasing(folder, swimmerId, signal, report)),
    'erase/do': (asked) =>
      start((signal, report) => eraseSwimmer(folder, asked, () => shelf.forget(), signal, report)),
  };
}
