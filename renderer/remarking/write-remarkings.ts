import { failure, type Result, success } from '#core/host-contract/host-error';
import type { CoachFile } from '#core/swim-file/coach-file';
import type { HostClient } from '../host/host-client';

/** Adds pairs to what the coach's file holds: read fresh, and once more when it changed in between. */
export async function writeRemarkings(
  host: Pick<HostClient, 'call'>,
  entries: CoachFile['remarkings'],
): Promise<Result<CoachFile>> {
  for (let tries = 0; tries < 2; tries++) {
    const read = await host.call('coach/read', {});
    if (!read.ok) return read;
    const coach = { ...read.value.coach, remarkings: [...read.value.coach.remarkings, ...entries] };
    if (entries.length === 0) return success(coach);
    const written = await host.call('coach/write', { coach, baseRevision: read.value.revision });
    if (written.ok) return success(coach);
    if (written.error.code !== 'conflict') return written;
  }
  return failure('conflict');
}
