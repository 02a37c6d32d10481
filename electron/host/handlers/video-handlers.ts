import { failure, type Result, success } from '#core/host-contract/host-error';
import type { videoOperations } from '#core/host-contract/operations/video-operations';
import { emptySquad } from '#core/swim-file/squad-file';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import { exportVideo, type VideoSource } from '../../video/export-video';
import { CoachOnDisk } from '../coach-on-disk';
import { squadFileOn } from '../squad-file';
import type { HandlersOf, HostParts } from './handlers';

export function videoHandlers(parts: HostParts): HandlersOf<typeof videoOperations> {
  const { disk, folder, jobs, makeId, shelf } = parts;
  const squadFile = squadFileOn(disk);
  const coachFile = new CoachOnDisk(folder.coach, disk);

  const sourceOf = async (swimId: string): Promise<Result<VideoSource>> => {
    const read = await shelf.read(swimId);
    if (!read.ok) return read;
    const { swim } = read.value;
    const clip = await shelf.presentClip(swimId);
    if (clip === null) return failure('clip-missing', { name: swim.clip.originalName });
    const squad = await squadFile.readOr(folder.squad, emptySquad);
    if (!squad.ok) return squad;
    const { swimmers } = squad.value.value;
    const swimmer = swimmers.find(({ id }) => id === swim.card.swimmerId) ?? null;
    return success({
      swim,
      clip,
      knowledge: { swimmer, markingError: coachMarkingError(await coachFile.read(), swim.clip.height) },
    });
  };

  return {
    'video/export': async ({ plan }) => {
      const sources: VideoSource[] = [];
      for (const { swimId } of plan.sides) {
        const source = await sourceOf(swimId);
        if (!source.ok) return source;
        sources.push(source.value);
      }
      const jobId = jobs.start((signal, report) =>
        exportVideo({ sources, plan, folder: folder.exports, tempId: makeId(), signal, report }),
      );
      return success({ jobId });
    },
  };
}
