import { success } from '#core/host-contract/host-error';
import type { trialOperations } from '#core/host-contract/operations/trial-operations';
import { parseTrial, serialiseTrial } from '#core/practice/trial-schema';
import { KeptFolder } from '../kept-folder';
import type { HandlersOf, HostParts } from './handlers';

export function trialHandlers({ folder, disk }: HostParts): HandlersOf<typeof trialOperations> {
  const trials = new KeptFolder(folder.trials, disk, parseTrial, serialiseTrial);
  return {
    'trial/list': async () => {
      const listed = await trials.list();
      if (!listed.ok) return listed;
      const all = listed.value.kept.map(({ value, revision }) => ({ trial: value, revision }));
      return success({
        trials: all.sort(({ trial: a }, { trial: b }) => b.changedAt.localeCompare(a.changedAt)),
        problems: listed.value.problems,
      });
    },
    'trial/read': async ({ id }) => {
      const read = await trials.read(id);
      if (!read.ok) return read;
      const { value, revision, written } = read.value;
      return success({ trial: value, revision, written });
    },
    'trial/write': ({ trial, baseRevision, lineage }) => trials.write(trial, baseRevision, lineage),
    'trial/remove': ({ id }) => trials.remove(id),
    'trial/restore': ({ id }) => trials.restore(id),
  };
}
