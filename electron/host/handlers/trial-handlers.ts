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
      return read.ok ? success({ trial: read.value.value, revision: read.value.revision }) : read;
    },
    'trial/write': ({ trial, baseRevision }) => trials.write(trial, baseRevision),
    'trial/remove': ({ id }) => trials.remove(id),
    'trial/restore': ({ id }) => trials.restore(id),
  };
}
