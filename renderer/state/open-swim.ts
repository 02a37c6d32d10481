import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Swim } from '#core/swim-file/swim-schema';
import type { HostClient } from '../host/host-client';
import { sameMarks } from './same-marks';
import type { SwimJournal } from './swim-journal';

export interface OpenedSwim {
  readonly swim: Swim;
  readonly revision: string;
  readonly clipStatus: 'present' | 'missing' | 'changed';
  /** Changes from last time that never reached the disk are in `swim` and wait to be written. */
  readonly replayed: boolean;
  /** Unsaved changes were found, but the file has changed since: the write will meet a conflict and keep both. */
  readonly replayedOnChangedFile: boolean;
}

/** Reads a swim and lays what the journal kept for it on top; nothing is dropped silently. */
export async function openSwim(
  host: Pick<HostClient, 'call'>,
  journal: SwimJournal,
  id: string,
  signal?: AbortSignal,
): Promise<Result<OpenedSwim>> {
  const read = await host.call('swim/read', { id }, signal);
  if (!read.ok) return failure(read.error.code, read.error.detail);
  const { swim, revision, clipStatus } = read.value;
  const kept = journal.read(id);
  if (kept && sameMarks(kept.swim, swim)) journal.forget(id);
  if (!kept || sameMarks(kept.swim, swim))
    return success({ swim, revision, clipStatus, replayed: false, replayedOnChangedFile: false });
  const changedFile = kept.baseRevision !== revision;
  return success({
    swim: kept.swim,
    revision: kept.baseRevision,
    clipStatus,
    replayed: true,
    replayedOnChangedFile: changedFile,
  });
}
