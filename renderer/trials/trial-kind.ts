import { success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import { type Trial, trialSchema } from '#core/practice/trial-schema';
import type { KeptKind } from '../documents/open-kept';
import type { ListedKind } from '../documents/use-kept-list';
import { trialsWords } from '#core/words/trials';

/** Trials, as the host keeps them. */
export const trialKind: KeptKind<Trial> = {
  prefix: 'submark-unsaved-trial-',
  schema: trialSchema,
  read: async (host, id) => {
    const read = await host.call('trial/read', { id });
    if (!read.ok) return read;
    const { trial, ...rest } = read.value;
    return success({ value: trial, ...rest });
  },
  write: (host, trial, baseRevision, lineage) =>
    host.call('trial/write', { trial, baseRevision, ...(lineage && { lineage }) }),
};

/** All of them, with their bin. */
export const trialListing: ListedKind<OperationOutput<'trial/list'>> = {
  list: (host) => host.call('trial/list', {}),
  remove: (host, id) => host.call('trial/remove', { id }),
  restore: (host, id) => host.call('trial/restore', { id }),
  backWords: trialsWords('trialBack'),
};
