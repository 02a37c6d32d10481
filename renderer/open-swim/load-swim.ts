import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Author } from '#core/host-contract/operations/lineage';
import type { Swim } from '#core/swim-file/swim-schema';
import type { HostClient } from '../host/host-client';
import { replayUnsaved } from '../documents/replay-unsaved';
import type { SwimJournal } from './swim-journal';

export interface OpenedSwim {
  readonly swim: Swim;
  readonly revision: string;
  readonly clipStatus: 'present' | 'missing' | 'changed';
  /** Changes from last time that never reached the disk are in `swim` and wait to be written. */
  readonly replayed: boolean;
  /** Whose work those changes are. */
  readonly grewFrom: readonly Author[];
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
  const { swim, revision, written, clipStatus } = read.value;
  const laid = await replayUnsaved(journal, id, { value: swim, revision, written }, (value, base, lineage) =>
    host.call('swim/write', { swim: value, baseRevision: base ?? revision, lineage }),
  );
  return success({
    swim: laid.value ?? swim,
    revision: laid.revision ?? revision,
    clipStatus,
    replayed: laid.replayed,
    grewFrom: laid.grewFrom,
  });
}
